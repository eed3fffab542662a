// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/blank_rail_place.h"

#include "app/desk/formats.h"
#include "app/places/blank_rail/rail_grid.h"
#include "app/places/blank_rail/rail_stand.h"
#include "app/places/blank_rail/rail_table.h"
#include "app/places/blank_rail/wash_card.h"
#include "app/theme/icons.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/chip.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/blank_actions.h"
#include "db/tables/ledgers.h"

#include <QBoxLayout>
#include <QPainter>
#include <QShortcut>
#include <QStackedWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kWashWidth = 352;
constexpr int kHintHeight = 32;
constexpr int kLeastRail = 700; // wide; where there is less next to the wash, the wash goes below

// A sign and what it means, in the foot of the grid.
class SignHint : public QWidget {
public:
    SignHint(QString iconName, QString text, Role ink)
        : m_iconName(std::move(iconName))
        , m_text(std::move(text))
        , m_ink(ink) {
        setFixedSize(static_cast<int>(widthOf(m_text, Type::Small)) + 26,
                     std::max(kHintHeight, lineHeight(Type::Small)));
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintIcon(painter, QRectF(0, (height() - 16) / 2.0, 16, 16), m_iconName, tokens().*m_ink);
        paintLine(painter, QRectF(22, 0, width() - 22, height()), m_text, Type::Small, tokens().ink2);
    }

private:
    QString m_iconName, m_text;
    Role m_ink;
};

} // namespace

BlankRailPlace::BlankRailPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("blankRail"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, kCardGap);
    m_scroll = new VerticalScroll;
    whole->addWidget(m_scroll);
    m_cards = new QHBoxLayout;
    m_cards->setContentsMargins(kGutter, 0, kGutter, 0);
    m_cards->setSpacing(kCardGap);
    m_scroll->column()->addLayout(m_cards, 1);
    m_pages = new QStackedWidget;
    m_pages->addWidget(makeRail());
    m_pages->addWidget(makeEmpty());
    m_cards->addWidget(m_pages, 1);
    m_wash = new WashCard(desk(), m_basket);
    connect(m_wash, &WashCard::basketChanged, this, &BlankRailPlace::refresh);
    connect(m_wash, &WashCard::washStarted, this, [this] { m_grid->setFocus(Qt::OtherFocusReason); });
    m_cards->addWidget(m_wash);

    connect(&desk(), &ShopDesk::changed, this, &BlankRailPlace::refresh);
}

QWidget* BlankRailPlace::makeEmpty() {
    m_empty = new EmptyState(QStringLiteral("blank-rail"),
                             tr("Blanks hang here by style, size and colour once the first style is added."),
                             tr("Add a blank style"));
    m_empty->setObjectName(QStringLiteral("emptyRail"));
    m_empty->showKey(QKeySequence(Qt::Key_A));
    connect(m_empty, &EmptyState::acted, this,
            [this] { emit desk().slipAsked(SlipName::AddStyle, SlipTarget{}); });
    auto* card = new Card;
    card->content()->addWidget(m_empty);
    return card;
}

QWidget* BlankRailPlace::makeRail() {
    auto* card = new Card;
    m_stand = new RailStand;
    connect(m_stand, &RailStand::chosen, this, &BlankRailPlace::showStyle);
    card->content()->addWidget(m_stand);
    m_table = new RailTable;
    m_grid = m_table->grid();
    connect(m_grid, &RailGrid::openAsked, this, &BlankRailPlace::openCell);
    card->content()->addWidget(m_table, 1);
    card->content()->addWidget(new ThreadLine);
    card->content()->addWidget(makeFoot());
    return card;
}

QWidget* BlankRailPlace::makeFoot() {
    auto* foot = new QWidget;
    auto* flow = new FlowLayout(foot, kSpace8);
    flow->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    flow->addWidget(new SignHint(QStringLiteral("washed"), tr("washed"), &Tokens::green));
    flow->addWidget(new SignHint(QStringLiteral("unwashed"), tr("unwashed"), &Tokens::ink2));
    flow->addWidget(new SignHint(QStringLiteral("plus"), tr("in tonight’s wash"), &Tokens::indigo));
    flow->addWidget(new SignHint(QStringLiteral("wash"), tr("drying"), &Tokens::ink2));
    const auto act = [&](const QString& words, const QKeySequence& key, const std::function<void()>& done) {
        auto* hint = new KeyHint(words, key, KeyHint::Order::KeyThenWords);
        hint->actWithin(this, done);
        flow->addWidget(hint);
    };
    act(tr("add to the wash"), Qt::Key_W, [this] { addToWash(0); });
    act(tr("one more"), Qt::Key_Plus, [this] { addToWash(1); });
    act(tr("one less"), Qt::Key_Minus, [this] { addToWash(-1); });
    act(tr("mark the oldest load dry"), Qt::Key_Y, [this] { markOldestDry(); });
    act(tr("correct the count"), Qt::Key_K, [this] { ask(SlipName::CorrectCount); });
    act(tr("measure shrinkage"), Qt::Key_M, [this] { ask(SlipName::MeasureShrinkage); });
    act(tr("read label"), Qt::Key_L, [this] { ask(SlipName::ReadLabel); });
    act(tr("change the style"), Qt::Key_E, [this] { askOfStyle(SlipName::ChangeStyle); });
    act(tr("add one like it"), Qt::Key_S, [this] { askOfStyle(SlipName::CopyStyle); });
    act(tr("add a style"), Qt::Key_A, [this] { emit desk().slipAsked(SlipName::AddStyle, SlipTarget{}); });
    // The styles hang as tabs, so that a pointer needs no hint for them.
    const auto turnBy = [this](Qt::Key key, int step) {
        auto* shortcut = new QShortcut(Qt::CTRL | key, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, [this, step] { showStyle(m_style + step); });
    };
    turnBy(Qt::Key_Left, -1);
    turnBy(Qt::Key_Right, 1);
    return foot;
}

// Side by side, each scrolling what is in it; where that is too narrow one below the other, and the place
// scrolls both.
void BlankRailPlace::layCards() {
    const int wash = std::max(kWashWidth, m_wash->minimumSizeHint().width());
    const bool isNarrow = width() < kLeastRail + wash + kCardGap + 2 * kGutter;
    m_cards->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_wash->setMinimumWidth(isNarrow ? 0 : wash);
    m_wash->setMaximumWidth(isNarrow ? QWIDGETSIZE_MAX : wash);
    m_table->setWhole(isNarrow);
    m_wash->setWhole(isNarrow);
}

void BlankRailPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    layCards();
}

QVector<PlaceKey> BlankRailPlace::moreKeys() const {
    return {{tr("Ctrl ← →"), tr("the style before, the next style")},
            {tr("Enter"), tr("what is in the cell")}};
}

QString BlankRailPlace::subtitle() const {
    return longDay(desk().now().today());
}

QWidget* BlankRailPlace::headerTools() {
    if (!m_tools) {
        m_tools = new QWidget;
        auto* row = new FlowLayout(m_tools, kSpace16);
        m_short = new Chip(QStringLiteral("hold"), {}, Tone::Held);
        row->addWidget(m_short);
        m_counts = new Label({}, Type::Body, &Tokens::ink2);
        m_counts->setTextFormat(Qt::RichText);
        row->addWidget(m_counts);
        auto* delivery = new Button(tr("Receive blanks"), QStringLiteral("plus"));
        delivery->setObjectName(QStringLiteral("delivery"));
        delivery->setKey(QKeySequence(Qt::Key_D));
        connect(delivery, &Button::clicked, this, [this] { ask(SlipName::ReceiveBlanks); });
        row->addWidget(delivery);
        refresh();
    }
    return m_tools;
}

void BlankRailPlace::opened() {
    if (m_isStale)
        refresh();
    if (m_rail.empty())
        m_empty->setFocus(Qt::OtherFocusReason);
    else
        m_grid->setFocus(Qt::OtherFocusReason);
}

void BlankRailPlace::turnTo(const SlipTarget& matter) {
    refresh();
    for (int style = 0; style < std::ssize(m_rail); ++style)
        if (matter.style && m_rail[static_cast<std::size_t>(style)].style->id == *matter.style)
            showStyle(style);
    if (!matter.style || !matter.colour)
        return;
    const RailSpot spot{*matter.style, matter.size.toStdString(), *matter.colour};
    m_grid->setCurrent(spot);
    // It comes from a hold that a wash frees: its blank is in the tub at once, one key more starts the wash.
    if (matter.rule == Rule::BlankUnwashed || matter.rule == Rule::SoftenerLeft) {
        const auto waiting = static_cast<std::int64_t>(waitingAt(*m_shop, spot).size());
        m_basket.set(m_shop->facts, spot, std::max<std::int64_t>(1, waiting));
        refresh();
        m_wash->focusStart();
    }
}

const StyleRail* BlankRailPlace::shown() const {
    return m_rail.empty() ? nullptr : &m_rail[static_cast<std::size_t>(m_style)];
}

void BlankRailPlace::refresh() {
    m_shop = desk().shop();
    m_rail = countRail(*m_shop);
    m_style = std::clamp(m_style, 0, std::max(0, static_cast<int>(m_rail.size()) - 1));
    m_pages->setCurrentIndex(m_rail.empty() ? 1 : 0);
    m_wash->setVisible(!m_rail.empty());
    m_wash->refresh();
    m_stand->show(m_rail, m_style);
    m_table->show(shown(), m_basket.units());
    layCards();
    m_isStale = false;
    if (!m_tools)
        return;
    RailCount all;
    std::int64_t isShort = 0;
    for (const StyleRail& hung : m_rail) {
        all += hung.total;
        isShort += hung.spotsShort;
    }
    m_short->setVisible(isShort > 0);
    m_short->set(QStringLiteral("hold"), tr("%1 short of washed").arg(isShort), Tone::Held);
    m_counts->setText(tr("<b>%1</b> blanks, <b>%2</b> unwashed").arg(all.all()).arg(all.unwashed));
}

void BlankRailPlace::showStyle(int style) {
    if (style < 0 || style >= std::ssize(m_rail))
        return;
    m_style = style;
    m_stand->show(m_rail, m_style);
    m_table->show(shown(), m_basket.units());
}

// 0 adds all of the cell that can be washed.
void BlankRailPlace::addToWash(std::int64_t units) {
    const auto spot = m_grid->current();
    if (!spot)
        return;
    const std::int64_t washable = washableAt(m_shop->facts, *spot);
    if (washable == 0) {
        desk().say(tr("Nothing here needs washing."));
        return;
    }
    m_basket.add(m_shop->facts, *spot, units == 0 ? washable : units);
    refresh();
}

bool BlankRailPlace::hangsAt(const RailSpot& spot) const {
    return std::ranges::any_of(m_shop->facts.lots, [&](const BlankLot& lot) {
        return lot.style == spot.style && lot.size == spot.size && lot.colour == spot.colour &&
               lot.unitsLeft > 0;
    });
}

// What hangs there, lot by lot; where nothing does, what may come in.
void BlankRailPlace::openCell() {
    if (const auto spot = m_grid->current())
        ask(hangsAt(*spot) ? SlipName::CorrectCount : SlipName::ReceiveBlanks);
}

void BlankRailPlace::ask(SlipName slip) {
    SlipTarget matter;
    const auto spot = m_grid->current();
    if (spot) {
        matter.style = spot->style;
        matter.size = words(spot->size);
        matter.colour = spot->colour;
    }
    const bool needsLot = slip == SlipName::CorrectCount || slip == SlipName::MeasureShrinkage;
    if (needsLot && !(spot && hangsAt(*spot))) {
        desk().say(tr("No blanks of this size and colour hang here."));
        return;
    }
    emit desk().slipAsked(slip, matter);
}

void BlankRailPlace::askOfStyle(SlipName slip) {
    const StyleRail* rail = shown();
    if (!rail)
        return;
    SlipTarget matter;
    matter.style = rail->style->id;
    emit desk().slipAsked(slip, matter);
}

void BlankRailPlace::markOldestDry() {
    const auto loads = desk().file().read(db::loadsUnderWay);
    if (!loads.ok() || loads->empty()) {
        desk().say(tr("No load is drying."));
        return;
    }
    desk().done(db::markDry(desk().file(), loads->front().load.id));
}

} // namespace holdfast::app
