#include "app/places/blank_rail/blank_rail_place.h"

#include "app/desk/formats.h"
#include "app/places/blank_rail/rail_grid.h"
#include "app/places/blank_rail/rail_stand.h"
#include "app/places/blank_rail/wash_card.h"
#include "app/theme/icons.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/chip.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/blank_actions.h"
#include "db/tables/ledgers.h"

#include <QBoxLayout>
#include <QShortcut>
#include <QStackedWidget>

namespace holdfast::app {

namespace {

constexpr int kWashWidth = 352;

// A sign and what it means, in the foot of the grid.
class SignHint : public QWidget {
public:
    SignHint(QString iconName, QString text, Role ink)
        : m_iconName(std::move(iconName))
        , m_text(std::move(text))
        , m_ink(ink) {
        setFixedSize(static_cast<int>(widthOf(m_text, Type::Small)) + 26, 24);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintIcon(painter, QRectF(0, 4, 16, 16), m_iconName, tokens().*m_ink);
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
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    row->setSpacing(kCardGap);
    m_pages = new QStackedWidget;
    m_empty = new EmptyState(QStringLiteral("blank-rail"),
                             tr("Blanks hang here by style, size and colour once the first style is known."),
                             tr("Add a blank style"));
    m_empty->setObjectName(QStringLiteral("emptyRail"));
    m_empty->showKey(QKeySequence(Qt::Key_A));
    connect(m_empty, &EmptyState::acted, this,
            [this] { emit desk().slipAsked(SlipName::AddStyle, Matter{}); });
    m_pages->addWidget(makeRail());
    auto* emptyCard = new Card;
    emptyCard->content()->addWidget(m_empty);
    m_pages->addWidget(emptyCard);
    row->addWidget(m_pages, 1);
    m_wash = new WashCard(desk(), m_basket);
    m_wash->setFixedWidth(kWashWidth);
    connect(m_wash, &WashCard::basketChanged, this, &BlankRailPlace::refresh);
    row->addWidget(m_wash);

    connect(&desk(), &ShopDesk::changed, this, &BlankRailPlace::refresh);
    addKeys();
}

QWidget* BlankRailPlace::makeRail() {
    auto* card = new Card;
    m_stand = new RailStand;
    connect(m_stand, &RailStand::chosen, this, &BlankRailPlace::showStyle);
    card->content()->addWidget(m_stand);
    m_heads = new RailHeads;
    card->content()->addWidget(m_heads);
    auto* scroll = new VerticalScroll;
    m_grid = new RailGrid;
    connect(m_grid, &RailGrid::addAsked, this, [this] { addToWash(0); });
    scroll->column()->addWidget(m_grid);
    scroll->column()->addStretch(1);
    card->content()->addWidget(scroll, 1);
    card->content()->addWidget(new ThreadLine);
    card->content()->addWidget(makeFoot());
    return card;
}

QWidget* BlankRailPlace::makeFoot() {
    auto* foot = new QWidget;
    auto* column = new QVBoxLayout(foot);
    column->setContentsMargins(kSpace16, kSpace8, kSpace16, kSpace8);
    column->setSpacing(kSpace4);
    auto* signs = new QHBoxLayout;
    signs->setSpacing(kSpace16);
    signs->addWidget(new SignHint(QStringLiteral("washed"), tr("washed"), &Tokens::green));
    signs->addWidget(new SignHint(QStringLiteral("unwashed"), tr("unwashed"), &Tokens::ink2));
    signs->addWidget(new SignHint(QStringLiteral("wash"), tr("drying"), &Tokens::ink2));
    signs->addWidget(new Label(tr("kept is promised to an order"), Type::Small, &Tokens::ink2));
    signs->addStretch(1);
    const auto hint = [&](QHBoxLayout* layout, const QString& text, const QKeySequence& key) {
        layout->addWidget(new KeyHint(text, key, KeyHint::Order::KeyThenWords));
    };
    hint(signs, tr("adds to the wash"), QKeySequence(Qt::Key_W));
    hint(signs, tr("one more"), QKeySequence(Qt::Key_Plus));
    hint(signs, tr("one less"), QKeySequence(Qt::Key_Minus));
    column->addLayout(signs);
    auto* acts = new QHBoxLayout;
    acts->setSpacing(kSpace16);
    hint(acts, tr("read label"), QKeySequence(Qt::Key_L));
    hint(acts, tr("correct the count"), QKeySequence(Qt::Key_K));
    hint(acts, tr("measure shrinkage"), QKeySequence(Qt::Key_M));
    hint(acts, tr("oldest load is dry"), QKeySequence(Qt::Key_Y));
    hint(acts, tr("add a style"), QKeySequence(Qt::Key_A));
    hint(acts, tr("next style"), QKeySequence(Qt::CTRL | Qt::Key_Right));
    acts->addStretch(1);
    column->addLayout(acts);
    return foot;
}

void BlankRailPlace::addKeys() {
    const auto key = [this](const QKeySequence& keys, auto act) {
        auto* shortcut = new QShortcut(keys, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, act);
    };
    key(QKeySequence(Qt::Key_W), [this] { addToWash(0); });
    key(QKeySequence(Qt::Key_Plus), [this] { addToWash(1); });
    key(QKeySequence(Qt::Key_Minus), [this] { addToWash(-1); });
    key(QKeySequence(Qt::Key_L), [this] { ask(SlipName::ReadLabel); });
    key(QKeySequence(Qt::Key_K), [this] { ask(SlipName::CorrectCount); });
    key(QKeySequence(Qt::Key_M), [this] { ask(SlipName::MeasureShrinkage); });
    key(QKeySequence(Qt::Key_A), [this] { emit desk().slipAsked(SlipName::AddStyle, Matter{}); });
    key(QKeySequence(Qt::Key_Y), [this] { markOldestDry(); });
    key(QKeySequence(Qt::CTRL | Qt::Key_Right), [this] { showStyle(m_style + 1); });
    key(QKeySequence(Qt::CTRL | Qt::Key_Left), [this] { showStyle(m_style - 1); });
}

QString BlankRailPlace::subtitle() const {
    return longDay(desk().now().today());
}

QWidget* BlankRailPlace::headerTools() {
    if (!m_tools) {
        m_tools = new QWidget;
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(kSpace16);
        m_short = new Chip(QStringLiteral("hold"), {}, Tone::Held);
        row->addWidget(m_short);
        m_counts = new Label({}, Type::Body, &Tokens::ink2);
        m_counts->setTextFormat(Qt::RichText);
        row->addWidget(m_counts);
        auto* delivery = new Button(tr("Delivery"), QStringLiteral("plus"));
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

void BlankRailPlace::turnTo(const Matter& matter) {
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
    m_heads->show(shown());
    m_grid->show(shown(), m_basket.units());
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
    m_heads->show(shown());
    m_grid->show(shown(), m_basket.units());
}

// 0 adds all of the cell that can be washed.
void BlankRailPlace::addToWash(std::int64_t units) {
    const auto spot = m_grid->current();
    if (!spot)
        return;
    const std::int64_t washable = washableAt(m_shop->facts, *spot);
    if (washable == 0) {
        desk().say(tr("Nothing here is to be washed."));
        return;
    }
    m_basket.add(m_shop->facts, *spot, units == 0 ? washable : units);
    refresh();
}

std::optional<BlankLotId> BlankRailPlace::lotAt(const RailSpot& spot) const {
    std::optional<BlankLotId> newest;
    for (const BlankLot& lot : m_shop->facts.lots)
        if (lot.style == spot.style && lot.size == spot.size && lot.colour == spot.colour &&
            lot.unitsLeft > 0)
            newest = lot.id;
    return newest;
}

void BlankRailPlace::ask(SlipName slip) {
    Matter matter;
    if (const auto spot = m_grid->current()) {
        matter.style = spot->style;
        matter.size = words(spot->size);
        matter.colour = spot->colour;
        matter.lot = lotAt(*spot);
    }
    const bool needsLot = slip == SlipName::CorrectCount || slip == SlipName::MeasureShrinkage;
    if (needsLot && !matter.lot) {
        desk().say(tr("No blanks of this size and colour hang here."));
        return;
    }
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
