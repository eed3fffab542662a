#include "app/places/fair_table/deposit_row.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <array>

namespace holdfast::app {

namespace {

constexpr std::array<DepositChoice, 4> kChoices{DepositChoice::None, DepositChoice::Ten, DepositChoice::Share,
                                                DepositChoice::All};
constexpr std::array<PaidHow, 2> kHow{PaidHow::Cash, PaidHow::Card};

} // namespace

DepositRow::DepositRow(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_choices(new Choice(tr("Deposit"), Choice::Shape::Segment))
    , m_typed(new Field)
    , m_how(new Choice(tr("Paid in"), Choice::Shape::Segment))
    , m_error(new Label({}, Type::SmallStrong, &Tokens::madder)) {
    m_choices->setObjectName(QStringLiteral("deposit"));
    m_typed->setObjectName(QStringLiteral("depositTyped"));
    m_typed->editor()->setAccessibleName(tr("Another amount put down"));
    m_typed->setRightAligned(true);
    m_typed->editor()->setMaxLength(40);
    m_how->setObjectName(QStringLiteral("paidHow"));
    m_how->setItems({{.text = tr("Cash")}, {.text = tr("Card")}});
    m_how->keepInOneLine();
    m_error->setObjectName(QStringLiteral("depositError"));
    m_error->wrapped();

    auto* hint = new KeyHint(tr("Deposit"), Qt::Key_E);
    hint->jumpTo(m_choices);
    auto* first = new QHBoxLayout;
    first->setSpacing(kSpace8);
    first->addWidget(hint);
    first->addWidget(m_typed, 1);
    first->addWidget(m_how);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kSpace8);
    column->addLayout(first);
    column->addWidget(m_choices);
    column->addWidget(m_error);
    setTabOrder(m_choices, m_typed);
    setTabOrder(m_typed, m_how);

    connect(m_choices, &Choice::chosen, this, [this](int at) {
        m_model.edit(Step::Choice, [&](TableDraft& draft) {
            draft.deposit = kChoices[static_cast<std::size_t>(at)];
            draft.depositTyped.clear();
        });
    });
    connect(m_typed, &Field::edited, this, [this](const QString& text) {
        m_model.edit(Step::Deposit, [&](TableDraft& draft) {
            draft.deposit = text.trimmed().isEmpty() ? DepositChoice::None : DepositChoice::Typed;
            draft.depositTyped = text.toStdString();
        });
    });
    connect(m_typed, &Field::finished, this, [this] { m_model.endStep(); });
    connect(m_how, &Choice::chosen, this, [this](int at) {
        m_model.edit(Step::Choice,
                     [&](TableDraft& draft) { draft.paidHow = kHow[static_cast<std::size_t>(at)]; });
    });
}

void DepositRow::refresh() {
    refreshChoices();
    const TableDraft& draft = m_model.draft();
    const int how = draft.paidHow == PaidHow::Card ? 1 : 0;
    if (m_how->chosenAt() != how)
        m_how->setChosen(how);
    if (m_typed->text().toStdString() != draft.depositTyped)
        m_typed->setText(words(draft.depositTyped));
    const auto& error = m_model.sums().depositError;
    const QString said = error ? words(error->message) : QString();
    m_error->setText(said);
    m_error->setVisible(!said.isEmpty());
    m_typed->editor()->setAccessibleDescription(said);
}

void DepositRow::refreshChoices() {
    const ShopSettings& settings = m_model.shop().facts.settings;
    const QString ten = words(settings.currency.sign) + QStringLiteral("10");
    const bool isHalf = settings.depositPercent <= 0 || settings.depositPercent == 50;
    const QString share = isHalf ? tr("Half") : tr("%1 %").arg(settings.depositPercent);
    const bool isSame = m_choices->items().size() == 4 && m_choices->items()[1].text == ten &&
                        m_choices->items()[2].text == share;
    if (!isSame)
        m_choices->setItems({{.text = tr("None")}, {.text = ten}, {.text = share}, {.text = tr("All")}});
    m_typed->setPlaceholder(moneyBare(m_model.sums().deposit, settings.currency));
    int chosen = -1;
    for (std::size_t at = 0; at < kChoices.size(); ++at)
        if (kChoices[at] == m_model.draft().deposit)
            chosen = static_cast<int>(at);
    if (m_choices->chosenAt() != chosen)
        m_choices->setChosen(chosen);
}

void DepositRow::takeFocus() {
    m_typed->setFocus(Qt::ShortcutFocusReason);
    m_typed->selectAll();
}

} // namespace holdfast::app
