// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/wash_rows.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/theme/undyed_cloth.h"
#include "app/widgets/label.h"
#include "app/widgets/stepper.h"

#include <QBoxLayout>
#include <QPainter>

namespace holdfast::app {

namespace {

// The garment of a row, drawn.
class ClothPicture : public QWidget {
public:
    ClothPicture(QString outline, QColor cloth)
        : m_outline(std::move(outline))
        , m_cloth(cloth) {
        setFixedSize(34, 40);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintGarment(painter, rect(), m_outline, m_cloth);
    }

private:
    QString m_outline;
    QColor m_cloth;
};

} // namespace

WashRows::WashRows(QWidget* parent)
    : QWidget(parent)
    , m_column(new QVBoxLayout(this))
    , m_nothing((new Label(tr("Nothing is chosen yet. W adds the unwashed blanks of the cell."),
                           Type::Support, &Tokens::ink2))
                    ->wrapped()) {
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(kSpace4);
    m_column->addWidget(m_nothing);
}

void WashRows::show(const ReckonedShop& shop, const WashBasket& basket) {
    m_nothing->setVisible(basket.isEmpty());
    for (auto row = m_rows.begin(); row != m_rows.end();) {
        if (basket.units().contains(row->first)) {
            ++row;
            continue;
        }
        row->second.whole->hide();
        row->second.whole->deleteLater(); // it may be the one whose stepper brought us here
        row = m_rows.erase(row);
    }
    int place = 1;
    for (const auto& [spot, units] : basket.units()) {
        auto row = m_rows.find(spot);
        if (row == m_rows.end()) {
            row = m_rows.emplace(spot, makeRow(shop, spot)).first;
            m_column->insertWidget(place, row->second.whole);
        }
        fill(row->second, shop, spot, units);
        ++place;
    }
}

WashRows::Row WashRows::makeRow(const ReckonedShop& shop, const RailSpot& spot) {
    const BlankStyle& style = shop.facts.styles.at(spot.style);
    const Colour* colour = style.colour(spot.colour);
    Row row{new QWidget, new Label({}, Type::Small, &Tokens::ink2), new Stepper(tr("Blanks in the wash"))};
    auto* layout = new QHBoxLayout(row.whole);
    layout->setContentsMargins(0, 2, 0, 2);
    layout->setSpacing(kSpace8);
    layout->addWidget(new ClothPicture(words(style.outline), colour ? colourOf(colour->rgb) : undyedCloth()));
    auto* text = new QVBoxLayout;
    text->setSpacing(0);
    text->addWidget(new ElidingLabel(
        tr("%1, %2, %3").arg(words(style.name), colour ? words(colour->name) : tr("?"), words(spot.size)),
        Type::SupportStrong));
    text->addWidget(row.waiting);
    layout->addLayout(text, 1);
    row.units->setObjectName(QStringLiteral("washUnits"));
    connect(row.units, &Stepper::stepped, this, [this, spot](int value) { emit stepped(spot, value); });
    layout->addWidget(row.units);
    return row;
}

void WashRows::fill(const Row& row, const ReckonedShop& shop, const RailSpot& spot, std::int64_t units) {
    const auto waiting = waitingAt(shop, spot);
    if (waiting.empty()) {
        row.waiting->setText(kilograms(shop.facts.styles.at(spot.style).weight * units));
        row.waiting->setInk(&Tokens::ink2);
    } else {
        const auto number = shop.facts.orderOf(*waiting.front()).number;
        row.waiting->setText(
            waiting.size() == 1
                ? tr("%1 waits").arg(number)
                : tr("%1 and %n more wait", nullptr, howMany(waiting.size() - 1)).arg(number));
        row.waiting->setInk(&Tokens::madder);
    }
    row.units->setRange(0, static_cast<int>(washableAt(shop.facts, spot)));
    row.units->setValue(static_cast<int>(units));
}

} // namespace holdfast::app
