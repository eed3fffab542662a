// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/price_panel.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_bill.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "core/trade/limits.h"
#include "core/trade/percentage_value.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kLongestWords = 60;
constexpr int kLongestAmount = 20;

Field* amountField(const QString& label, const QString& name) {
    auto* field = new Field(label);
    field->setObjectName(name);
    field->setRightAligned(true);
    field->editor()->setMaxLength(kLongestAmount);
    return field;
}

Field* wordsField(const QString& label, const QString& name) {
    auto* field = new Field(label);
    field->setObjectName(name);
    field->editor()->setMaxLength(kLongestWords);
    return field;
}

// As a person types it: "10 %", "5.00".
QString typedAs(const std::variant<Money, Percentage>& worth, const Currency& currency) {
    if (const auto* share = std::get_if<Percentage>(&worth))
        return QStringLiteral("%1 %").arg(valueWords(decimalOf(Percentage{-share->hundredths})));
    return moneyBare(-std::get<Money>(worth), currency);
}

bool isAmount(const QString& text, const Currency& currency) {
    const auto amount = parseAmount(text.toStdString(), currency);
    return amount && *amount >= Money{};
}

} // namespace

PricePanel::PricePanel(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model) {
    build();
    connectAll();
}

void PricePanel::build() {
    m_title = new Label({}, Type::BodyStrong);
    m_price = amountField(tr("Price of each"), QStringLiteral("priceByHand"));
    m_usual = (new Label({}, Type::Small, &Tokens::ink2))->wrapped();
    m_usual->setObjectName(QStringLiteral("usualPrice"));
    m_discount = amountField(tr("Discount, % or amount"), QStringLiteral("discount"));
    m_because = wordsField(tr("Because"), QStringLiteral("discountReason"));
    m_extra = wordsField(tr("Extra for"), QStringLiteral("extraWords"));
    m_amount = amountField(tr("Amount"), QStringLiteral("extraAmount"));
    m_add = new Button(tr("Add the extra"));
    m_add->setObjectName(QStringLiteral("addExtra"));
    m_add->setTargetHeight(kStallTarget);
    m_usualRow = new QWidget;
    m_usualExtras = new FlowLayout(m_usualRow, kSpace8);

    auto* scroll = new VerticalScroll;
    QVBoxLayout* rows = scroll->column();
    rows->setSpacing(kSpace8);
    rows->addLayout(rowOf({m_price}));
    rows->addWidget(m_usual);
    rows->addLayout(rowOf({m_discount, m_because}));
    auto* extra = rowOf({m_extra, m_amount});
    extra->addWidget(m_add, 0, Qt::AlignTop);
    rows->addLayout(extra);
    rows->addWidget(m_usualRow);
    rows->addStretch();
    auto* close = new KeyHint(tr("close"), QKeySequence(Qt::Key_Escape));
    close->setTargetHeight(kStallTarget);
    close->actOnClick([this] { emit closed(); });
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    column->setSpacing(kSpace8);
    column->addWidget(m_title);
    column->addWidget(scroll, 1);
    column->addWidget(close, 0, Qt::AlignLeft);
}

QHBoxLayout* PricePanel::rowOf(std::initializer_list<Field*> fields) {
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace8);
    for (Field* field : fields)
        row->addWidget(field, 1, Qt::AlignTop);
    return row;
}

void PricePanel::connectAll() {
    connect(m_price, &Field::edited, this, &PricePanel::typePrice);
    connect(m_discount, &Field::edited, this, &PricePanel::typeDiscount);
    connect(m_because, &Field::edited, this, &PricePanel::typeDiscount);
    for (Field* field : {m_price, m_discount, m_because})
        connect(field, &Field::finished, this, [this] { m_model.endStep(); });
    connect(m_add, &QAbstractButton::clicked, this, &PricePanel::addExtra);
}

void PricePanel::begin() {
    const TableDraft& draft = m_model.draft();
    const Currency& currency = m_model.shop().facts.settings.currency;
    const auto& byHand = draft.garment().priceByHand;
    const BillLine* discount = discountOf(draft);
    m_price->setText(byHand ? moneyBare(*byHand, currency) : QString());
    m_discount->setText(discount ? typedAs(discount->worth, currency) : QString());
    m_because->setText(discount ? words(discount->words) : QString());
    for (Field* field : {m_extra, m_amount})
        field->setText({});
    for (Field* field : {m_price, m_discount, m_because, m_extra, m_amount})
        field->setError({});
    refresh();
    Field* first = m_model.style() ? m_price : m_discount;
    first->setFocus(Qt::ShortcutFocusReason);
    first->selectAll();
}

void PricePanel::refresh() {
    refreshPrice();
    refreshUsual();
}

void PricePanel::refreshPrice() {
    const TableDraft& draft = m_model.draft();
    const Currency& currency = m_model.shop().facts.settings.currency;
    const GarmentSums& sums = m_model.sums().garments[draft.garmentAt];
    const bool isChosen = draft.garment().style.isSet();
    m_title->setText(isChosen ? tr("Price of %1").arg(garmentWords(draft.garment(), m_model.shop().facts))
                              : tr("Price of the order"));
    m_price->setEnabled(isChosen);
    m_price->setPlaceholder(isChosen ? moneyBare(sums.usual, currency) : QString());
    m_usual->setText(isChosen ? tr("%1 by the shop’s prices. It costs the shop %2.")
                                    .arg(money(sums.usual, currency), money(sums.cost.total(), currency))
                              : tr("Choose the garment first, to price it by hand."));
}

void PricePanel::refreshUsual() {
    const auto& extras = m_model.shop().facts.settings.prices.extras;
    if (extras == m_usualShown)
        return;
    m_usualShown = extras;
    while (QLayoutItem* item = m_usualExtras->takeAt(0)) {
        item->widget()->deleteLater();
        delete item;
    }
    for (const UsualExtra& extra : extras) {
        auto* button = new Button(QStringLiteral("%1 %2").arg(
            words(extra.words), money(extra.amount, m_model.shop().facts.settings.currency)));
        button->setTargetHeight(kStallTarget);
        connect(button, &QAbstractButton::clicked, this, [this, extra] { addUsual(extra); });
        m_usualExtras->addWidget(button);
    }
    m_usualRow->setVisible(!extras.empty());
}

void PricePanel::typePrice(const QString& text) {
    const Currency& currency = m_model.shop().facts.settings.currency;
    const bool isEmpty = text.trimmed().isEmpty();
    m_price->setError(isEmpty || isAmount(text, currency) ? QString() : tr("An amount, 0 or more"));
    if (!m_price->error().isEmpty())
        return;
    const auto price = isEmpty ? std::nullopt : parseAmount(text.toStdString(), currency);
    m_model.edit(Step::Price, [&](TableDraft& draft) { draft.garment().priceByHand = price; });
}

void PricePanel::typeDiscount() {
    const std::string typed = trimmed(m_discount->text().toStdString());
    const auto worth = readDiscount(typed, m_model.shop().facts.settings.currency);
    m_discount->setError(typed.empty() || worth ? QString() : tr("An amount, or a percentage such as 10 %"));
    if (!m_discount->error().isEmpty())
        return;
    const std::string why = trimmed(m_because->text().toStdString());
    m_model.edit(Step::Discount, [&](TableDraft& draft) { giveDiscount(draft, worth, why); });
}

void PricePanel::addExtra() {
    const Currency& currency = m_model.shop().facts.settings.currency;
    const std::string what = trimmed(m_extra->text().toStdString());
    const auto amount = parseAmount(m_amount->text().toStdString(), currency);
    m_extra->setError(what.empty() ? tr("What is it for?") : QString());
    m_amount->setError(amount && *amount >= Money{} ? QString() : tr("An amount, 0 or more"));
    if (!m_extra->error().isEmpty() || !m_amount->error().isEmpty()) {
        (what.empty() ? m_extra : m_amount)->setFocus(Qt::OtherFocusReason);
        return;
    }
    addUsual({what, *amount});
    m_extra->setText({});
    m_amount->setText({});
    m_extra->setFocus(Qt::OtherFocusReason);
}

void PricePanel::addUsual(const UsualExtra& extra) {
    m_model.endStep();
    m_model.edit(Step::Choice, [&](TableDraft& draft) {
        draft.lines.push_back({BillLineKind::Extra, extra.words, extra.amount});
    });
}

// Enter: from field to field of what is begun, and out of what is done. Never the order itself.
void PricePanel::goOn() {
    const bool isExtra = m_extra->editor()->hasFocus() || m_amount->editor()->hasFocus();
    if (isExtra && !(m_extra->text().trimmed().isEmpty() && m_amount->text().trimmed().isEmpty())) {
        if (m_extra->editor()->hasFocus() && m_amount->text().trimmed().isEmpty())
            m_amount->setFocus(Qt::TabFocusReason);
        else
            addExtra();
        return;
    }
    if (m_discount->editor()->hasFocus() && discountOf(m_model.draft())) {
        m_because->setFocus(Qt::TabFocusReason);
        return;
    }
    for (const Field* field : {m_price, m_discount})
        if (!field->error().isEmpty())
            return;
    emit closed();
}

void PricePanel::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!event->isAutoRepeat())
            goOn();
        return;
    case Qt::Key_Escape:
        emit closed();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

} // namespace holdfast::app
