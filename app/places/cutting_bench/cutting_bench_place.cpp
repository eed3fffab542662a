// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/cutting_bench_place.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_foot.h"
#include "app/places/cutting_bench/bench_panel.h"
#include "app/places/cutting_bench/bench_tools.h"
#include "app/places/cutting_bench/bench_view.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cut_not_pressed.h"
#include "app/widgets/card.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/sewn_tabs.h"

#include <QBoxLayout>
#include <QStackedWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kPanelWidth = 352;
constexpr int kNarrow = 760;     // a place narrower than this has its panel below the bench
constexpr int kLeastBench = 320; // heights, where they are above one another
constexpr int kLeastPanel = 320;

} // namespace

CuttingBenchPlace::CuttingBenchPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("cuttingBench"));
    m_empty =
        new EmptyState(QStringLiteral("cutting-bench"),
                       tr("Decals to cut are shown here, film by film, once a confirmed order has any."),
                       tr("Take an order"));
    m_empty->setObjectName(QStringLiteral("emptyBench"));
    m_empty->showKey(QKeySequence(Qt::CTRL | Qt::Key_1));
    connect(m_empty, &EmptyState::acted, this,
            [this] { emit desk().placeAsked(PlaceName::FairTable, SlipTarget{}); });
    auto* emptyCard = new Card;
    emptyCard->content()->addWidget(m_empty);
    m_pages = new QStackedWidget;
    m_pages->addWidget(makeBench());
    m_pages->addWidget(emptyCard);
    m_panel = new BenchPanel(desk(), m_model);
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_row->setSizeConstraint(QLayout::SetNoConstraint); // how small it may be depends on how it is arranged
    m_row->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    m_row->setSpacing(kCardGap);
    m_row->addWidget(m_pages, 1);
    m_row->addWidget(m_panel);
    arrange();

    connect(m_panel, &BenchPanel::wishChanged, this, [this] { m_view->setWish(m_panel->wish()); });
    connect(m_panel, &BenchPanel::saveAsked, this, &CuttingBenchPlace::askCutFile);
    connect(m_panel, &BenchPanel::sheetAsked, this, [this] { printCutSheets(paperFolder()); });
    connect(m_panel, &BenchPanel::cutAsked, this, &CuttingBenchPlace::markCut);
    connect(&desk(), &ShopDesk::changed, this, &CuttingBenchPlace::refresh);
    connect(&desk(), &ShopDesk::minutePassed, this, &CuttingBenchPlace::refresh);
    listenToModel();
    listenToWork();
}

void CuttingBenchPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

bool CuttingBenchPlace::isNarrow() const {
    return width() <
           std::max(kNarrow, m_pages->minimumSizeHint().width() + kPanelWidth + kCardGap + 2 * kGutter);
}

void CuttingBenchPlace::arrange() {
    const bool isBelow = isNarrow();
    m_row->setDirection(isBelow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_row->setStretch(1, isBelow ? 1 : 0);
    m_panel->setMinimumWidth(isBelow ? 0 : kPanelWidth);
    m_panel->setMaximumWidth(isBelow ? QWIDGETSIZE_MAX : kPanelWidth);
    m_pages->setMinimumHeight(isBelow ? leastBench() : 0);
    m_panel->setMinimumHeight(isBelow ? leastPanel() : 0);
}

// With its tools on as many lines as they take at this width, which a stack does not say by itself.
int CuttingBenchPlace::leastBench() const {
    const QLayout* page = m_pages->currentWidget()->layout();
    const int wide = width() - 2 * kGutter - (isNarrow() ? 0 : kPanelWidth + kCardGap);
    return std::max(kLeastBench, page->hasHeightForWidth() ? page->totalMinimumHeightForWidth(wide)
                                                           : page->totalMinimumSize().height());
}

int CuttingBenchPlace::leastPanel() const {
    return std::max(kLeastPanel, m_panel->minimumSizeHint().height());
}

// Another tool, or longer words on one.
bool CuttingBenchPlace::event(QEvent* event) {
    if (event->type() == QEvent::LayoutRequest)
        arrange();
    return Place::event(event);
}

QSize CuttingBenchPlace::minimumSizeHint() const {
    const int high =
        isNarrow() ? leastBench() + kCardGap + leastPanel() : std::max(leastBench(), leastPanel());
    const int wide = std::max(m_pages->minimumSizeHint().width(), m_panel->minimumSizeHint().width());
    return {wide + 2 * kGutter, high + kCardGap};
}

QVector<PlaceKey> CuttingBenchPlace::moreKeys() const {
    return {{tr("Arrows"), tr("move the decal by 1 mm, with Shift by 10 mm")},
            {tr("Tab"), tr("go to the next decal")},
            {tr("Delete"), tr("leave the decal out")},
            {tr("W"), tr("cut with weeding frames or without")},
            {tr("E"), tr("part the film after the last decal or not")}};
}

QWidget* CuttingBenchPlace::makeBench() {
    auto* whole = new QWidget;
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_films = new SewnTabs(tr("Films to cut"));
    m_films->setObjectName(QStringLiteral("films"));
    connect(m_films, &SewnTabs::chosen, this, [this](int at) { m_model.chooseFilm(at); });
    connect(m_films, &SewnTabs::left, this, &CuttingBenchPlace::takeKeyboard);
    auto* card = new Card;
    m_films->sewOnto(card);
    m_tools = new BenchTools;
    m_view = new BenchView(m_model);
    m_foot = new BenchFoot(m_model);
    card->content()->addWidget(m_tools);
    card->content()->addWidget(m_view, 1);
    card->content()->addWidget(new ThreadLine);
    card->content()->addWidget(m_foot);
    column->addWidget(m_films);
    column->addWidget(card, 1);
    connect(m_tools, &BenchTools::nestAsked, this, &CuttingBenchPlace::searchAgain);
    connect(m_tools, &BenchTools::endAsked, this, [this] {
        m_search.stop();
        m_writing.stop();
    });
    connect(m_tools, &BenchTools::turnAsked, this, &CuttingBenchPlace::turnDecal);
    connect(m_tools, &BenchTools::pinAsked, this, &CuttingBenchPlace::turnPin);
    connect(m_tools, &BenchTools::gapAsked, this, [this](int gap) { m_model.setGap({gap}); });
    connect(m_view, &BenchView::dragBegun, &m_search, &BenchSearch::drop);
    connect(m_view, &BenchView::refused, &desk(), &ShopDesk::say);
    return whole;
}

void CuttingBenchPlace::listenToModel() {
    connect(&m_model, &BenchModel::filmsChanged, this, &CuttingBenchPlace::showFilms);
    connect(&m_model, &BenchModel::beingLaid, this, [this] {
        m_search.drop();
        showFilms();
        showBench();
    });
    connect(&m_model, &BenchModel::nested, this, [this] {
        m_search.drop();
        showFilms(); // another roll may come first
        showBench();
        if (m_view->hasFocus() && !m_model.chosen())
            m_model.chooseNext(1);
        if (isVisible())
            searchByItself();
    });
    connect(&m_model, &BenchModel::moved, this, [this] {
        m_search.drop();
        showBench();
    });
    connect(&m_model, &BenchModel::chosenChanged, this, [this] {
        m_panel->showFigures();
        showTools();
    });
    connect(&m_model, &BenchModel::offcutsChanged, m_panel, &BenchPanel::refresh);
}

void CuttingBenchPlace::listenToWork() {
    connect(&m_search, &BenchSearch::progressed, m_tools,
            [this](double share) { m_tools->setWork(BenchTools::Work::Search, share); });
    connect(&m_search, &BenchSearch::ended, m_tools, [this] { m_tools->setWork(BenchTools::Work::None); });
    connect(&m_search, &BenchSearch::found, this, [this](const FilmNests& nests) {
        m_model.take(nests);
        searchIsOver();
    });
    connect(&m_writing, &BackgroundWork::progressed, m_tools,
            [this](const QString&, double share) { m_tools->setWork(BenchTools::Work::Writing, share); });
    connect(&m_writing, &BackgroundWork::succeeded, this, [this](const QString& words) {
        m_tools->setWork(BenchTools::Work::None);
        desk().say(words);
    });
    connect(&m_writing, &BackgroundWork::failed, this, [this](const QString& reason) {
        m_tools->setWork(BenchTools::Work::None);
        emit desk().failed(reason);
    });
}

QString CuttingBenchPlace::subtitle() const {
    return longDay(desk().now().today());
}

QWidget* CuttingBenchPlace::headerTools() {
    if (!m_header) {
        m_header = new QWidget;
        auto* row = new FlowLayout(m_header, kSpace16);
        m_filmKey = new KeyHint(tr("Film"), QKeySequence(Qt::Key_F));
        m_filmKey->jumpTo(m_films);
        row->addWidget(m_filmKey);
        m_benchKey = new KeyHint(tr("Decals"), QKeySequence(Qt::Key_D));
        m_benchKey->jumpTo(m_view);
        row->addWidget(m_benchKey);
        m_count = new Label({}, Type::Body, &Tokens::ink2);
        m_count->setObjectName(QStringLiteral("decalsToCut"));
        m_count->setTextFormat(Qt::RichText);
        row->addWidget(m_count);
        countTools();
    }
    return m_header;
}

void CuttingBenchPlace::opened() {
    const bool wasStale = m_isStale;
    if (m_isStale)
        refresh();
    if (!wasStale)
        searchByItself();
    takeKeyboard();
}

void CuttingBenchPlace::takeKeyboard() {
    if (m_pages->currentIndex() == 1)
        m_empty->setFocus(Qt::OtherFocusReason);
    else
        m_view->setFocus(Qt::OtherFocusReason);
}

void CuttingBenchPlace::turnTo(const SlipTarget& matter) {
    if (m_isStale)
        refresh();
    const ShopFacts& facts = m_model.facts();
    std::optional<FilmId> film = matter.film;
    std::optional<DecalId> decal = matter.decal;
    if (const FilmRoll* roll = matter.roll ? facts.rolls.find(*matter.roll) : nullptr)
        film = roll->film;
    const Garment* garment = matter.garment ? facts.garments.find(*matter.garment) : nullptr;
    if (garment && !decal)
        for (const Decal& each : garment->decals)
            if (!each.isCut() && !decal)
                decal = each.id;
    if (decal)
        if (const DecalOnGarment on = m_model.decal(*decal); on.decal)
            film = on.decal->film;
    if (film && m_model.chooseFilm(*film) && m_model.film()->film == *film)
        m_model.layOnly(matter.roll, matter.decals);
    if (decal)
        m_model.choose(*decal);
}

void CuttingBenchPlace::hideEvent(QHideEvent* event) {
    m_search.drop();
    Place::hideEvent(event);
}

// ── what is shown ─────────────────────────────────────────────────────────────────────────────────────

void CuttingBenchPlace::refresh() {
    if (m_isCutting)
        return;
    if (!isVisible() && !m_isStale) {
        m_isStale = true;
        return;
    }
    m_isStale = false;
    m_model.show(desk().shop());
    countTools();
    emit subtitleChanged();
}

void CuttingBenchPlace::showFilms() {
    QVector<SewnTab> tabs;
    for (const FilmToCut& film : m_model.films()) {
        const Film& of = m_model.facts().films.at(film.film);
        const QString count = film.waiting.empty() ? tr("not yet") : decalsToCut(film.waiting.size());
        tabs.append({.text = words(of.shade),
                     .second = m_model.firstRollOf(film) ? count : tr("no roll, %1").arg(count),
                     .shade = colourOf(of.rgb)});
    }
    m_films->setTabs(tabs);
    m_films->setCurrent(m_model.filmAt());
    m_pages->setCurrentIndex(tabs.isEmpty() ? 1 : 0);
    // Work that is cut may still be found cut wrong when nothing waits any more.
    m_panel->setVisible(!tabs.isEmpty() || !cutNotPressed(*m_model.shop(), std::nullopt).empty());
}

void CuttingBenchPlace::showBench() {
    m_panel->refresh();
    m_view->layOut();
    showTools();
}

void CuttingBenchPlace::showTools() {
    m_foot->refresh();
    if (!m_model.film())
        return;
    m_tools->setGap(static_cast<int>(m_model.onBench().wish.gap.value));
    const auto chosen = m_model.chosen();
    const NestedDecal* lies = chosen ? m_model.lying(*chosen) : nullptr;
    const QString none = lies ? QString() : tr("Choose a decal first.");
    if (m_model.isBeingLaid()) {
        m_tools->setNest(beingLaidWords());
        m_tools->setTurn(beingLaidWords());
        m_tools->setPin(beingLaidWords(), lies && lies->isPinned);
        return;
    }
    m_tools->setNest(m_model.nests().empty() ? tr("Nothing is on the bench.") : QString());
    m_tools->setTurn(m_model.hasGrain() ? tr("This film has a grain: its decals keep their direction.")
                                        : none);
    m_tools->setPin(lies && !m_model.canBePinned(*chosen) ? tr("Only decals on the first roll are pinned.")
                                                          : none,
                    lies && lies->isPinned);
}

void CuttingBenchPlace::countTools() {
    if (!m_count || !m_model.shop())
        return;
    std::size_t decals = 0;
    for (const FilmToCut& film : m_model.films())
        decals += film.waiting.size();
    const QString count = tr("<b>%n</b> decal to cut|<b>%n</b> decals to cut", nullptr, howMany(decals));
    const std::size_t films = m_model.films().size();
    m_count->setText(films > 1 ? tr("%1 on %n film|%1 on %n films", nullptr, howMany(films)).arg(count)
                               : count);
    for (QWidget* tool : {static_cast<QWidget*>(m_count), static_cast<QWidget*>(m_filmKey),
                          static_cast<QWidget*>(m_benchKey)})
        tool->setVisible(films > 0);
}

void CuttingBenchPlace::turnDecal() {
    if (m_model.chosen() && !m_model.turn())
        desk().say(m_model.hasGrain() ? tr("This film has a grain: its decals keep their direction.")
                                      : tr("There is no room to turn it."));
}

void CuttingBenchPlace::turnPin() {
    if (m_model.chosen() && !m_model.turnPin())
        desk().say(tr("Only decals on the first roll are pinned."));
}

} // namespace holdfast::app
