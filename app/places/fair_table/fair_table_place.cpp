// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/fair_table_place.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/centre_panel.h"
#include "app/places/fair_table/decal_panel.h"
#include "app/places/fair_table/message_scroll.h"
#include "app/places/fair_table/picks_panel.h"
#include "app/places/fair_table/sums_panel.h"
#include "app/places/fair_table/today_tools.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/widgets/field.h"
#include "app/widgets/vertical_scroll.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kPicksWidth = 398;
constexpr int kSumsWidth = 352;
constexpr int kNarrowSums = 342;
constexpr int kThreeColumns = 1184; // of the place: picks, garment and bill are side by side
constexpr int kThreeColumnsHigh = 560;
constexpr int kTwoColumns = 702;   // narrower, and the bill is below the garment
constexpr int kBillHigh = 500;     // there
constexpr int kLeastMessages = 64; // where they are below a column that scrolls
constexpr int kMostMessages = 230;
constexpr double kMessageShare = 0.3; // of the place's height
constexpr int kRoomySums = 900;

// Digits and arrows begin the next order by its style.
bool choosesStyle(const QKeyEvent* event) {
    const bool isDigit = event->key() >= Qt::Key_1 && event->key() <= Qt::Key_9;
    const bool isArrow = event->key() >= Qt::Key_Left && event->key() <= Qt::Key_Down;
    return (isDigit || isArrow) && !(event->modifiers() & ~Qt::KeypadModifier);
}

bool isTypedIn(const QWidget* widget) {
    return qobject_cast<const QLineEdit*>(widget) != nullptr;
}

} // namespace

FairTablePlace::FairTablePlace(ShopDesk& desk, QWidget* parent)
    : Place(desk, parent)
    , m_model(desk) {
    setObjectName(QStringLiteral("fairTable"));
    setFocusPolicy(Qt::ClickFocus);
    giveNoFocusRing(this);
    m_picks = new PicksPanel(m_model);
    m_centre = new CentrePanel(m_model);
    m_sums = new SumsPanel(m_model);
    m_left = new VerticalScroll;
    m_leftParts = new QHBoxLayout;
    m_leftParts->setSpacing(kCardGap);
    m_leftParts->addWidget(m_picks);
    m_leftParts->addWidget(m_centre, 1);
    m_left->column()->addLayout(m_leftParts);
    m_leftSide = new QVBoxLayout;
    m_leftSide->setSpacing(kSpace8);
    m_leftSide->addWidget(m_left, 1);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    row->setSpacing(kCardGap);
    row->addLayout(m_leftSide, 1);
    row->addWidget(m_sums);
    connectAll();
    arrange();
    refresh();
}

void FairTablePlace::connectAll() {
    connect(&m_model, &FairTableModel::changed, this, &FairTablePlace::refresh);
    connect(m_sums, &SumsPanel::takeAsked, this, &FairTablePlace::take);
    connect(m_sums, &SumsPanel::keyboardFreed, this, [this] { takeKeyboard(); });
    connect(m_sums, &SumsPanel::ticketAsked, this, [this] {
        SlipTarget taken;
        taken.order = m_model.taken()->id;
        emit this->desk().paperAsked(PaperName::ClaimTicket, taken);
    });
    connect(m_centre->decals(), &DecalPanel::keyboardFreed, this, [this] { takeKeyboard(); });
    connect(&desk(), &ShopDesk::changed, this, &Place::subtitleChanged);
    connect(&desk(), &ShopDesk::minutePassed, this, &Place::subtitleChanged);
}

// Three columns; on a narrow or low window one that scrolls and the bill; on the narrowest one for all.
void FairTablePlace::arrange() {
    const bool isNarrow = width() < kThreeColumns || height() < kThreeColumnsHigh;
    arrangeMessages(isNarrow);
    m_leftParts->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_picks->setMinimumWidth(isNarrow ? 0 : kPicksWidth);
    m_picks->setMaximumWidth(isNarrow ? QWIDGETSIZE_MAX : kPicksWidth);
    m_picks->setWhole(isNarrow);
    m_centre->setWhole(isNarrow);
    arrangeBill(isNarrow);
    m_left->updateGeometry(); // what scrolls does not say by itself that it may be narrower now
    layout()->activate();
    m_mostSaid = 0;
    giveMessagesRoom();
}

void FairTablePlace::arrangeMessages(bool isNarrow) {
    MessageScroll* messages = m_centre->decals()->messages();
    if (!isNarrow) {
        m_centre->decals()->takeMessages();
        return;
    }
    m_leftSide->addWidget(messages);
    messages->setVisible(true);
}

// Below a column that scrolls they take no more room than they need, and give none back while the order is
// the same: what is chosen would move.
void FairTablePlace::giveMessagesRoom() {
    MessageScroll* messages = m_centre->decals()->messages();
    if (m_leftSide->indexOf(messages) < 0)
        return;
    if (m_model.draft().isUntouched())
        m_mostSaid = 0;
    m_mostSaid = std::max(m_mostSaid, messages->neededHeight());
    const int most = std::clamp(static_cast<int>(height() * kMessageShare), kLeastMessages, kMostMessages);
    const int high = std::min(m_mostSaid, most);
    if (messages->height() == high && messages->minimumHeight() == high)
        return;
    messages->setFixedHeight(high);
    m_leftSide->activate();
    // What the keyboard is in stays in view.
    if (QWidget* focused = QApplication::focusWidget(); focused && m_left->isAncestorOf(focused))
        showIn(*m_left, *focused);
}

void FairTablePlace::arrangeBill(bool isNarrow) {
    const bool isBelow = width() < kTwoColumns;
    QLayout* parts = isBelow ? static_cast<QLayout*>(m_leftParts) : layout();
    if (parts->indexOf(m_sums) < 0) {
        parts->addWidget(m_sums);
        m_sums->setVisible(true);
    }
    const bool isRoomy = width() >= (isNarrow ? kRoomySums : kThreeColumns + kSumsWidth - kNarrowSums);
    m_sums->setMinimumHeight(isBelow ? kBillHigh : 0);
    m_sums->setMinimumWidth(isBelow ? 0 : isRoomy ? kSumsWidth : kNarrowSums);
    m_sums->setMaximumWidth(isBelow ? QWIDGETSIZE_MAX : isRoomy ? kSumsWidth : kNarrowSums);
}

void FairTablePlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

// What is typed in says that it is finished while all that hears it is still there; then the panels go before
// the model they show.
FairTablePlace::~FairTablePlace() {
    if (QWidget* focused = QApplication::focusWidget(); focused && isAncestorOf(focused))
        focused->clearFocus();
    delete m_picks;
    delete m_centre;
    delete m_sums;
}

QString FairTablePlace::subtitle() const {
    const ReckonedShop& shop = *desk().shop();
    const QString where =
        shop.facts.settings.fairName.empty() ? tr("At the workshop") : words(shop.facts.settings.fairName);
    return QStringLiteral("%1 · %2").arg(where, longDay(shop.now.today()));
}

QWidget* FairTablePlace::headerTools() {
    if (!m_today)
        m_today = new TodayTools(desk());
    return m_today;
}

// Where an order begins; while one is under way letters jump and Enter takes it.
void FairTablePlace::takeKeyboard() {
    if (m_model.draft().isUntouched() && !m_model.taken())
        takeFocus(Section::Style);
    else
        setFocus(Qt::OtherFocusReason);
}

void FairTablePlace::opened() {
    const TableDraft& draft = m_model.draft();
    takeFocus(draft.isUntouched() || !draft.garment().style.isSet() ? Section::Style : Section::Decal);
}

// A blank style or a lot that somebody asks from: it is chosen for the garment at hand.
// An order: it is laid on the table again.
void FairTablePlace::turnTo(const SlipTarget& matter) {
    if (matter.order) {
        matter.isAgain ? m_model.takeAgain(*matter.order) : m_model.open(*matter.order);
        takeKeyboard();
        return;
    }
    const BlankStyle* style = matter.style ? m_model.shop().facts.styles.find(*matter.style) : nullptr;
    if (!style || m_model.draft().garment().style.isSet())
        return;
    m_model.edit(Step::Choice, [&](TableDraft& draft) {
        chooseStyle(draft, *style);
        if (matter.colour && style->colour(*matter.colour))
            draft.garment().colour = *matter.colour;
        if (std::ranges::find(style->sizes, plain(matter.size)) != style->sizes.end())
            draft.garment().size = plain(matter.size);
    });
}

OwnSteps FairTablePlace::ownSteps() const {
    OwnSteps steps;
    if (m_model.canUndo())
        steps.undo = tr("last step");
    if (m_model.canRedo())
        steps.redo = tr("next step");
    return steps;
}

QVector<PlaceKey> FairTablePlace::moreKeys() const {
    return {{tr("Enter"), tr("takes the order, or goes to what is missing")},
            {QStringLiteral("+"), tr("adds another garment")},
            {QStringLiteral("M"), tr("adds the same garment again, for another name")},
            {QStringLiteral("I"), tr("a note to the order")},
            {QStringLiteral("U"), tr("the day the customer asks for: fri, tomorrow, 4 dec")},
            {QStringLiteral("J"), tr("takes what makes it sooner")},
            {QStringLiteral("H"), tr("a price by hand, a discount, an extra")},
            {QStringLiteral("V"), tr("a list of a team: names, numbers and sizes, typed or pasted")},
            {tr("C, K in the amount"), tr("paid in cash, by card")},
            {tr("Delete in the lines"), tr("removes the garment or the decal")},
            {tr("Ctrl ↑ ↓ in the lines"), tr("changes which decal lies over which")},
            {tr("Arrows on the garment"), tr("move the decal by 5 mm, with Shift by 1 mm")}};
}

void FairTablePlace::refresh() {
    m_picks->refresh();
    m_centre->refresh();
    m_sums->refresh();
    giveMessagesRoom();
    emit ownStepsChanged();
    // What was asked for stays said until it is there.
    if (!m_asked)
        return;
    const auto missing = m_model.missing(m_asked->isQuotation);
    if (missing && missing->section == m_asked->section && !m_model.taken())
        sayMissing(*missing);
    else {
        m_asked.reset();
        sayMissing({});
    }
}

void FairTablePlace::sayMissing(const Missing& missing) {
    m_centre->decals()->setWordsError(missing.section == Section::Words ? missing.what : QString());
    const bool isSaidAtField = missing.section == Section::Words;
    m_sums->setError(isSaidAtField ? Section::None : missing.section,
                     isSaidAtField ? QString() : missing.what);
}

void FairTablePlace::take(bool isQuotation) {
    if (m_model.opened() && !m_model.isChanged()) {
        desk().say(tr("Order %1 stays as it was.").arg(m_model.opened()->order.number));
        m_model.clear();
        return;
    }
    if (const auto missing = m_model.missing(isQuotation)) {
        if (missing->garment != m_model.draft().garmentAt)
            m_model.turn([&](TableDraft& draft) {
                draft.garmentAt = missing->garment;
                draft.decalAt.reset();
                if (!draft.garment().decals.empty())
                    draft.decalAt = 0;
            });
        m_asked = Asked{missing->section, isQuotation};
        sayMissing(*missing);
        takeFocus(missing->section);
        return;
    }
    const auto taken = m_model.take(isQuotation);
    if (!desk().done(taken))
        return;
    // Not on a tile: a second Enter must not begin the next order and hide the number.
    setFocus(Qt::OtherFocusReason);
}

void FairTablePlace::takeFocus(Section section) {
    switch (section) {
    case Section::Style:
    case Section::Size:
    case Section::Colour:
        m_picks->takeFocus(section);
        return;
    case Section::Placement:
    case Section::Decal:
    case Section::Film:
    case Section::Words:
    case Section::Width:
        m_centre->takeFocus(section);
        return;
    case Section::Name:
    case Section::Phone:
    case Section::Deposit:
        m_sums->takeFocus(section);
        return;
    case Section::None:
        return;
    }
}

void FairTablePlace::keyPressEvent(QKeyEvent* event) {
    const bool isPlain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!event->isAutoRepeat())
            take(false);
        return;
    case Qt::Key_Plus:
        if (isPlain) {
            m_sums->addGarmentToOrder();
            takeFocus(Section::Style);
            return;
        }
        break;
    case Qt::Key_M:
        if (isPlain && patternAt(m_model.draft())) {
            m_centre->decals()->addSameAgain();
            return;
        }
        break;
    case Qt::Key_H:
        if (isPlain) {
            m_centre->decals()->openPrice();
            return;
        }
        break;
    case Qt::Key_V:
        if (isPlain) {
            m_centre->decals()->openTeam();
            return;
        }
        break;
    case Qt::Key_Escape:
        // Out of a field, so that letters jump again.
        if (isTypedIn(QApplication::focusWidget())) {
            setFocus(Qt::OtherFocusReason);
            return;
        }
        break;
    default:
        // Never under a half-typed order: there it would change a style that was chosen.
        if (hasFocus() && m_model.draft().isUntouched() && choosesStyle(event)) {
            takeFocus(Section::Style);
            if (QWidget* tile = QApplication::focusWidget(); tile && tile != this)
                QApplication::sendEvent(tile, event);
            return;
        }
        break;
    }
    Place::keyPressEvent(event);
}

void FairTablePlace::hideEvent(QHideEvent* event) {
    m_model.keepNow();
    Place::hideEvent(event);
}

} // namespace holdfast::app
