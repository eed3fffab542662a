// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/fibre_rows.h"

#include "app/desk/formats.h"
#include "app/slips/pick_list.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "core/trade/unit_words.h"

#include <QBoxLayout>
#include <QLineEdit>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kWhole = 100; // percent
constexpr int kNoShare = -1;
constexpr int kShareWidth = 92;

QVector<PickItem> everyFibre() {
    QVector<PickItem> items;
    for (int at = 0; at < kFibreCount; ++at)
        items.append({words(withCapital(fibreName(static_cast<Fibre>(at))))});
    return items;
}

} // namespace

FibreRows::FibreRows(const std::vector<FibreShare>& fibres, QWidget* parent)
    : QWidget(parent)
    , m_column(new QVBoxLayout)
    , m_sum((new Label(QString(), Type::Small, &Tokens::ink2))->wrapped())
    , m_add(new Button(tr("Another fibre"), QStringLiteral("plus"), Button::Kind::Quiet)) {
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(kSpace8);
    m_column->setSpacing(kSpace8);
    whole->addLayout(m_column);
    auto* below = new QHBoxLayout;
    below->addWidget(m_sum, 1);
    below->addWidget(m_add);
    whole->addLayout(below);
    m_add->setObjectName(QStringLiteral("addFibre"));
    for (const FibreShare& share : fibres)
        addRow(share.fibre, QString::number(share.percent));
    if (fibres.empty())
        addRow(Fibre::Cotton, {});
    connect(m_add, &QAbstractButton::clicked, this, [this] {
        const int missing = kWhole - sum();
        Row& row =
            addRow(nextFibre(), missing > 0 && missing < kWhole ? QString::number(missing) : QString());
        row.fibre->setFocus(Qt::TabFocusReason);
        showSum();
        emit changed();
    });
    showSum();
}

FibreRows::Row& FibreRows::addRow(Fibre fibre, const QString& share) {
    const auto number = static_cast<int>(m_rows.size());
    Row row{new PickList(tr("Fibre %1").arg(number + 1)), new Field};
    row.fibre->setItems(everyFibre(), static_cast<int>(fibre));
    row.fibre->setObjectName(QStringLiteral("fibre-%1").arg(number));
    row.share->setObjectName(QStringLiteral("share-%1").arg(number));
    row.share->editor()->setObjectName(QStringLiteral("share-%1Editor").arg(number));
    row.share->editor()->setAccessibleName(tr("Share of fibre %1 in percent").arg(number + 1));
    row.share->setSuffix(QStringLiteral("%"));
    row.share->setText(share);
    row.share->setFixedWidth(kShareWidth);
    row.fibre->setMinimumHeight(row.share->sizeHint().height());
    auto* line = new QHBoxLayout;
    line->setSpacing(kSpace8);
    line->addWidget(row.fibre, 1);
    line->addWidget(row.share);
    m_column->addLayout(line);
    // At once, so that the keyboard can go there.
    row.fibre->show();
    row.share->show();
    connect(row.fibre, &QComboBox::activated, this, &FibreRows::changed);
    connect(row.share, &Field::edited, this, [this] {
        showSum();
        emit changed();
    });
    if (number == 0)
        setFocusProxy(row.fibre);
    m_rows.push_back(row);
    m_add->setVisible(number + 1 < kFibreCount);
    return m_rows.back();
}

Fibre FibreRows::nextFibre() const {
    for (const Fibre usual : {Fibre::Cotton, Fibre::Polyester, Fibre::Elastane, Fibre::Viscose})
        if (std::ranges::none_of(
                m_rows, [&](const Row& row) { return row.fibre->currentIndex() == static_cast<int>(usual); }))
            return usual;
    return Fibre::Other;
}

std::vector<FibreShare> FibreRows::fibres() const {
    std::vector<FibreShare> fibres;
    for (const Row& row : m_rows) {
        const QString typed = row.share->text().trimmed();
        if (typed.isEmpty())
            continue;
        bool isNumber = false;
        const int percent = typed.toInt(&isNumber);
        fibres.push_back({static_cast<Fibre>(row.fibre->currentIndex()), isNumber ? percent : kNoShare});
    }
    return fibres;
}

int FibreRows::sum() const {
    int sum = 0;
    for (const FibreShare& share : fibres())
        sum += std::clamp(share.percent, 0, 10 * kWhole);
    return sum;
}

QVariant FibreRows::typed() const {
    QVariantList rows;
    for (const Row& row : m_rows)
        rows.append(QVariant(QVariantList{row.fibre->currentIndex(), row.share->text()}));
    return rows;
}

void FibreRows::putBack(const QVariant& typed) {
    const QVariantList rows = typed.toList();
    while (std::ssize(m_rows) < rows.size())
        addRow(nextFibre(), {});
    for (qsizetype at = 0; at < rows.size(); ++at) {
        const QVariantList row = rows[at].toList();
        m_rows[static_cast<std::size_t>(at)].fibre->setCurrentIndex(row.value(0).toInt());
        m_rows[static_cast<std::size_t>(at)].share->setText(row.value(1).toString());
    }
    showSum();
    emit changed();
}

bool FibreRows::isFilled() const {
    return sum() == kWhole;
}

void FibreRows::showSum() {
    const int reached = sum();
    if (reached == kWhole)
        m_sum->setText(tr("Adds to 100 %."));
    else if (reached < kWhole)
        m_sum->setText(tr("Adds to %1 %, %2 % missing.").arg(reached).arg(kWhole - reached));
    else
        m_sum->setText(tr("Adds to %1 %, %2 % too many.").arg(reached).arg(reached - kWhole));
    m_sum->setInk(reached == kWhole ? &Tokens::green : &Tokens::weld);
}

} // namespace holdfast::app
