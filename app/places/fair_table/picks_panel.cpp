// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/picks_panel.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/drop_legend.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/stepper.h"
#include "app/widgets/vertical_scroll.h"

#include <QAbstractButton>
#include <QFontMetricsF>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QResizeEvent>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kLeft = 13;
constexpr int kBesideBar = 4;
constexpr int kMostStyleColumns = 6;
constexpr int kStyleWide = 80; // of its tile, at least
constexpr int kSizeColumns = 7;
constexpr int kSizeGap = 5;    // seven sizes fit side by side
constexpr int kTileSpare = 8;  // room around a tile's words that can be done without
constexpr int kSizeSpare = 18; // the same, where seven are in a row
constexpr int kSizesHeight = 62;
constexpr double kStyleRoom = 72;
constexpr double kSizeRoom = 150;
constexpr double kColourRoom = 104;
constexpr int kMostColourColumns = 2;
constexpr int kBesideCounts = 75 + 2 * (kSmallIcon + 2); // of a colour's tile: its shade, two drops and gaps
constexpr int kSizeRowWide = 330;                        // heading and how many side by side

// Sets the items only where something is new: setting makes tiles be laid out and read aloud again.
bool isAlike(const QVector<ChoiceItem>& one, const QVector<ChoiceItem>& other) {
    return std::ranges::equal(one, other, [](const ChoiceItem& left, const ChoiceItem& right) {
        const bool marksAlike =
            std::ranges::equal(left.marks, right.marks, [](const auto& mark, const auto& against) {
                return mark.iconName == against.iconName && mark.words == against.words;
            });
        return left.text == right.text && left.second == right.second && left.outline == right.outline &&
               left.shade == right.shade && left.isInStock == right.isInStock && marksAlike;
    });
}

// Says whether they are new.
bool showTiles(Choice* choice, const QVector<ChoiceItem>& items, int chosen) {
    const bool areNew = !isAlike(choice->items(), items);
    if (areNew)
        choice->setItems(items);
    if (choice->chosenAt() != chosen)
        choice->setChosen(chosen);
    return areNew;
}

// A long name is whole in the order's lines and the tile's tool tip.
QString fitted(const std::string& name, Type type, double room) {
    return QFontMetricsF(fontOf(type)).elidedText(words(name), Qt::ElideRight, room);
}

// Without those that go away.
QList<QAbstractButton*> shownTiles(const Choice* choice) {
    return choice->findChildren<QAbstractButton*>().first(choice->items().size());
}

// The whole names, for those who hear the tiles or rest on one.
template <class Things, class Name>
void nameTiles(const Choice* choice, const Things& things, const Name& nameOf) {
    const auto tiles = shownTiles(choice);
    qsizetype at = 0;
    for (const auto& thing : things) {
        if (at == tiles.size())
            return;
        const QString name = words(nameOf(thing));
        tiles[at]->setAccessibleName(name);
        tiles[at]->setToolTip(name);
        ++at;
    }
}

// As narrow as their tiles, so that a column is never wider than its card.
void setTightColumns(Choice* choice, int columns) {
    choice->setColumns(columns);
    auto* grid = static_cast<QGridLayout*>(choice->layout());
    for (int column = 0; column < columns; ++column)
        grid->setColumnMinimumWidth(column, 0);
}

template <class Things, class Wanted>
int placeOf(const Things& things, const Wanted& isWanted) {
    int at = 0;
    for (const auto& thing : things) {
        if (isWanted(thing))
            return at;
        ++at;
    }
    return -1;
}

} // namespace

PicksPanel::PicksPanel(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model) {
    build();
    connect(m_styles, &Choice::chosen, this, [this](int at) {
        const BlankStyle& style = *offeredStyles()[static_cast<std::size_t>(at)];
        m_model.edit(Step::Choice, [&](TableDraft& draft) { chooseStyle(draft, style); });
    });
    connect(m_sizes, &Choice::chosen, this, [this](int at) {
        const std::string size = m_model.style()->sizes[static_cast<std::size_t>(at)];
        m_model.edit(Step::Choice, [&](TableDraft& draft) { chooseSize(draft, m_model.style(), size); });
    });
    connect(m_colours, &Choice::chosen, this, [this](int at) {
        const ColourId colour = offeredColours()[static_cast<std::size_t>(at)]->id;
        m_model.edit(Step::Choice, [&](TableDraft& draft) { draft.garment().colour = colour; });
    });
    connect(m_noStyles, &EmptyState::acted, this,
            [this] { emit m_model.desk().slipAsked(SlipName::AddStyle, {}); });
    connect(m_copies, &Stepper::stepped, this, [this](int copies) {
        m_model.edit(Step::Copies, [&](TableDraft& draft) { draft.garment().copies = copies; });
    });
}

void PicksPanel::build() {
    m_styles = new Choice(tr("Style"), Choice::Shape::Picture);
    m_styles->setObjectName(QStringLiteral("style"));
    m_sizes = new Choice(tr("Size"), Choice::Shape::Stacked);
    m_sizes->setObjectName(QStringLiteral("size"));
    m_sizes->layout()->setSpacing(kSizeGap);
    m_colours = new Choice(tr("Colour"), Choice::Shape::Swatch);
    m_colours->setObjectName(QStringLiteral("colour"));
    m_copies = new Stepper(tr("How many of this garment"));
    m_copies->setObjectName(QStringLiteral("copies"));
    m_copies->setRange(1, kMostCopies);
    m_copies->setTargetHeight(kStallTarget);
    m_noStyles = new EmptyState(QStringLiteral("blank-rail"),
                                tr("Blank styles are shown here once the shop has one."), tr("Add a style"));
    m_noStyles->setObjectName(QStringLiteral("noStyles"));
    m_noStyles->setKey(QKeySequence(Qt::Key_A));

    const auto heading = [this](const QString& words, const QKeySequence& key, Choice* choice) {
        auto* hint = new KeyHint(words, key, KeyHint::Order::WordsThenKey, this);
        hint->jumpTo(choice);
        return hint;
    };
    auto* copiesRow = new QHBoxLayout;
    auto* howMany = new KeyHint(tr("How many"), Qt::Key_Q);
    howMany->jumpTo(m_copies);
    copiesRow->addStretch();
    copiesRow->addWidget(howMany);
    copiesRow->addWidget(m_copies);
    m_sizeRow = new QHBoxLayout;
    m_sizeRow->addWidget(heading(tr("Size"), Qt::Key_S, m_sizes));
    m_sizeRow->addLayout(copiesRow, 1);
    m_colourName = heading(tr("Colour"), Qt::Key_C, m_colours);

    auto* scroll = new VerticalScroll;
    m_all = scroll;
    scroll->widget()->installEventFilter(this);
    auto* column = scroll->column();
    column->setContentsMargins(kLeft, kSpace12, kLeft, kSpace8);
    column->setSpacing(kSpace8);
    column->addWidget(heading(tr("Style"), Qt::Key_G, m_styles));
    column->addWidget(m_styles);
    column->addSpacing(kSpace4);
    column->addLayout(m_sizeRow);
    column->addWidget(m_sizes);
    column->addSpacing(kSpace8);
    column->addWidget(m_colourName);
    column->addWidget(m_colours);
    column->addStretch();
    // The bar of a column that scrolls is in its margin, so that no tile gets narrower.
    connect(scroll->verticalScrollBar(), &QScrollBar::rangeChanged, column, [column](int, int highest) {
        column->setContentsMargins(kLeft, kSpace12, highest > 0 ? kBesideBar : kLeft, kSpace8);
    });

    auto* card = new Card;
    card->content()->addWidget(m_noStyles, 1);
    card->content()->addWidget(scroll, 1);
    m_legend = new DropLegend;
    auto* legendRow = new QHBoxLayout;
    legendRow->setContentsMargins(kLeft, kSpace4, kSpace16, kSpace12);
    legendRow->addWidget(m_legend);
    card->content()->addLayout(legendRow);

    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(card);
}

// What is retired is not offered; a garment that has it keeps it.
std::vector<const BlankStyle*> PicksPanel::offeredStyles() const {
    std::vector<const BlankStyle*> offered;
    for (const BlankStyle& style : m_model.shop().facts.styles)
        if (!style.isRetired || style.id == m_model.draft().garment().style)
            offered.push_back(&style);
    return offered;
}

std::vector<const Colour*> PicksPanel::offeredColours() const {
    std::vector<const Colour*> offered;
    if (const BlankStyle* style = m_model.style())
        for (const Colour& colour : style->colours)
            if (!colour.isRetired || colour.id == m_model.draft().garment().colour)
                offered.push_back(&colour);
    return offered;
}

void PicksPanel::refresh() {
    refreshStyles();
    refreshSizes();
    refreshColours();
    if (m_copies->value() != m_model.draft().garment().copies)
        m_copies->setValue(m_model.draft().garment().copies);
}

void PicksPanel::refreshStyles() {
    QVector<ChoiceItem> items;
    const std::vector<const BlankStyle*> styles = offeredStyles();
    for (const BlankStyle* style : styles)
        items.append(
            {.text = fitted(style->name, Type::Small, kStyleRoom), .outline = words(style->outline)});
    const BlankStyleId chosen = m_model.draft().garment().style;
    m_noStyles->setVisible(items.isEmpty());
    m_all->setVisible(!items.isEmpty());
    m_legend->setVisible(!items.isEmpty());
    const int at = placeOf(styles, [&](const BlankStyle* style) { return style->id == chosen; });
    if (showTiles(m_styles, items, at))
        nameTiles(m_styles, styles, [](const BlankStyle* style) { return style->name; });
}

void PicksPanel::refreshSizes() {
    QVector<ChoiceItem> items;
    int chosen = -1;
    if (const BlankStyle* style = m_model.style()) {
        const TableGarment& garment = m_model.draft().garment();
        for (const std::string& size : style->sizes) {
            const BlankStock stock = m_model.stockLeft(size, garment.colour);
            items.append({.text = fitted(size, Type::ListStrong, kSizeRoom),
                          .second = stock.total() > 0 ? tr("%1 left").arg(stock.total()) : tr("none"),
                          .isInStock = stock.total() > 0});
        }
        chosen = placeOf(style->sizes, [&](const std::string& size) { return size == garment.size; });
    }
    m_sizes->setMinimumHeight(items.isEmpty() ? kSizesHeight : 0); // keeps its row while no style is chosen
    if (!showTiles(m_sizes, items, chosen) || !m_model.style())
        return;
    fitSizes();
    nameTiles(m_sizes, m_model.style()->sizes, [](const std::string& size) { return size; });
}

int PicksPanel::room() const {
    return width() - 2 * kLeft;
}

void PicksPanel::fitColumns() {
    m_sizeRow->setDirection(room() < kSizeRowWide ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_styles->setColumns(std::clamp((room() + kSpace8) / (kStyleWide + kSpace8), 1, kMostStyleColumns));
    fitSizes();
    fitColours();
    m_all->updateGeometry(); // what scrolls does not say by itself that it may be narrower now
}

// Seven sizes side by side where their words allow it; more, or long ones, take more rows.
void PicksPanel::fitSizes() {
    int widest = 0;
    const auto tiles = shownTiles(m_sizes);
    for (QAbstractButton* tile : tiles) {
        tile->setMinimumWidth(tile->sizeHint().width() - kSizeSpare);
        widest = std::max(widest, tile->minimumWidth());
    }
    const int count = std::max(1, static_cast<int>(tiles.size()));
    const int most = std::clamp((room() + kSizeGap) / std::max(1, widest + kSizeGap), 1, kSizeColumns);
    const int rows = (count + most - 1) / most;
    const int columns = (count + rows - 1) / rows; // rows as even as can be
    setTightColumns(m_sizes, columns);
}

// Two side by side, or one where their counts are long.
void PicksPanel::fitColours() {
    int widest = 0;
    for (QAbstractButton* tile : shownTiles(m_colours)) {
        tile->setMinimumWidth(tile->sizeHint().width() - kTileSpare);
        widest = std::max(widest, tile->minimumWidth());
    }
    setTightColumns(m_colours,
                    std::clamp((room() + kSpace8) / std::max(1, widest + kSpace8), 1, kMostColourColumns));
}

// Two columns are kept where counts are long: the drop alone says what is washed, as below it is said.
bool PicksPanel::needsBriefCounts() const {
    const BlankStyle* style = m_model.style();
    const double half = (room() - kSpace8) / 2.0;
    return style && std::ranges::any_of(offeredColours(), [&](const Colour* colour) {
               const BlankStock stock = m_model.stockLeft(m_model.draft().garment().size, colour->id);
               const QString counts =
                   tr("%1 washed").arg(stock.washed) + QString::number(stock.unwashed + stock.drying);
               return kBesideCounts + widthOf(counts, Type::Small) > half;
           });
}

QString PicksPanel::washedWords(const BlankStock& stock) const {
    return m_areCountsBrief ? QString::number(stock.washed) : tr("%1 washed").arg(stock.washed);
}

void PicksPanel::refreshColours() {
    QVector<ChoiceItem> items;
    QVector<BlankStock> counts;
    const TableGarment& garment = m_model.draft().garment();
    m_areCountsBrief = needsBriefCounts();
    const std::vector<const Colour*> colours = offeredColours();
    for (const Colour* colour : colours) {
        const BlankStock stock = m_model.stockLeft(garment.size, colour->id);
        ChoiceItem item{.text = fitted(colour->name, Type::BodyStrong, kColourRoom),
                        .shade = colourOf(colour->rgb),
                        .isInStock = stock.total() > 0};
        if (stock.total() > 0)
            item.marks = {{QStringLiteral("washed"), washedWords(stock), &Tokens::green},
                          {QStringLiteral("unwashed"), QString::number(stock.unwashed + stock.drying)}};
        else
            item.second = tr("none in stock");
        items.append(item);
        counts.append(stock);
    }
    const int chosen = placeOf(colours, [&](const Colour* colour) { return colour->id == garment.colour; });
    const bool isInOneSize = garment.size.empty() || !m_model.style() || m_model.style()->sizes.size() < 2;
    m_colourName->setWords(isInOneSize ? tr("Colour") : tr("Colour, in %1").arg(words(garment.size)));
    if (!showTiles(m_colours, items, chosen) || !m_model.style())
        return;
    fitColours();
    nameTiles(m_colours, colours, [](const Colour* colour) { return colour->name; });
    for (qsizetype at = 0; at < items.size(); ++at)
        if (!items[at].marks.isEmpty())
            shownTiles(m_colours)[at]->setAccessibleDescription(
                tr("%1 washed, %2 to wash")
                    .arg(counts[at].washed)
                    .arg(counts[at].unwashed + counts[at].drying));
}

void PicksPanel::setWhole(bool isWhole) {
    m_isWhole = isWhole;
    followHeight();
}

void PicksPanel::followHeight() {
    m_all->setMinimumHeight(m_isWhole ? m_all->widget()->minimumSizeHint().height() : 0);
}

bool PicksPanel::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::LayoutRequest)
        followHeight();
    return QWidget::eventFilter(watched, event);
}

void PicksPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() == event->oldSize().width())
        return;
    if (m_areCountsBrief != needsBriefCounts())
        refreshColours();
    fitColumns();
}

void PicksPanel::takeFocus(Section section) {
    if (m_styles->items().isEmpty())
        m_noStyles->setFocus(Qt::OtherFocusReason);
    else if (section == Section::Style)
        m_styles->takeFocus();
    else if (section == Section::Size)
        m_sizes->takeFocus();
    else
        m_colours->takeFocus();
}

} // namespace holdfast::app
