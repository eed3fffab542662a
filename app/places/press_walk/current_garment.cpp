// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/current_garment.h"

#include "app/desk/garment_words.h"
#include "app/places/press_walk/garment_sheet.h"
#include "app/places/press_walk/route_list.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/label.h"

#include <QFontMetricsF>
#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

namespace holdfast::app {

// The number in sans, the name in serif, on one baseline.
class CurrentGarment::Heading : public QWidget {
public:
    explicit Heading(QWidget* parent = nullptr)
        : QWidget(parent) {
        setFixedHeight(34);
    }

    void set(const QString& number, const QString& name) {
        m_number = number;
        m_name = name;
        setAccessibleName(number + QLatin1Char(' ') + name);
        setToolTip(name);
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const qreal baseline = 25;
        const qreal x = paintRun(painter, {0, baseline}, m_number, Type::Number, tokens().ink) + 9;
        const QString fitted =
            QFontMetricsF(fontOf(Type::CardTitle)).elidedText(m_name, Qt::ElideRight, width() - x);
        paintRun(painter, {x, baseline}, fitted, Type::CardTitle, tokens().ink);
    }

private:
    QString m_number;
    QString m_name;
};

CurrentGarment::CurrentGarment(QWidget* parent)
    : Card(parent) {
    setObjectName(QStringLiteral("currentGarment"));
    m_sheet = new GarmentSheet;
    m_heading = new Heading;
    m_customer = new ElidingLabel({}, Type::Small, &Tokens::ink2);
    m_route = new RouteList;

    auto* right = new QVBoxLayout;
    right->setContentsMargins(14, 8, 12, 8);
    right->setSpacing(0);
    right->addWidget(m_heading);
    right->addWidget(m_customer);
    right->addSpacing(5);
    right->addWidget(m_route, 1);

    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(m_sheet, 272);
    row->addLayout(right, 325);
    content()->addLayout(row, 1);
}

void CurrentGarment::setCompact(bool isCompact) {
    m_sheet->setVisible(!isCompact);
    m_route->setVisible(!isCompact);
    setSizePolicy(QSizePolicy::Preferred, isCompact ? QSizePolicy::Maximum : QSizePolicy::Preferred);
}

void CurrentGarment::show(const std::shared_ptr<const ReckonedShop>& shop, std::optional<GarmentId> garment) {
    const bool isThere = garment && shop->facts.garments.find(*garment);
    m_garment = isThere ? garment : std::nullopt;
    m_customer->setVisible(isThere);
    if (!isThere) {
        m_sheet->clear();
        m_route->clear();
        m_heading->set({}, {});
        return;
    }
    const Garment& found = shop->facts.garments.at(*garment);
    const Assessment& assessment = shop->of(*garment);
    const std::size_t at = assessment.progress.underway.value_or(assessment.progress.finished);
    m_sheet->show(shop, *garment, at);
    m_heading->set(garmentNumber(shop->facts, found), garmentName(shop->facts, found));
    m_customer->setText(customerAndFilm(shop->facts, found, shop->allotment));
    m_route->show(assessment.route, at, assessment.progress.underway.has_value());
}

} // namespace holdfast::app
