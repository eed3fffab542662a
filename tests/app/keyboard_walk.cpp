// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/keyboard_walk.h"

#include "app/command_line/tour_matters.h"
#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/reading_order.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "db/actions/shop_actions.h"
#include "db/demo/demo_shop.h"

#include <QApplication>
#include <QLineEdit>
#include <QScrollArea>
#include <QSet>
#include <QTest>

#include <cstdio>

namespace holdfast::app::test {

namespace {

constexpr int kMostStops = 200;
constexpr int kWithinAStop = 60; // a bench takes Tab from decal to decal

QVector<Qt::Key> allKeys() {
    QVector<Qt::Key> keys;
    for (int key = Qt::Key_A; key <= Qt::Key_Z; ++key)
        keys.append(static_cast<Qt::Key>(key));
    for (int key = Qt::Key_0; key <= Qt::Key_9; ++key)
        keys.append(static_cast<Qt::Key>(key));
    return keys + QVector<Qt::Key>{Qt::Key_Tab,   Qt::Key_Backtab, Qt::Key_Escape, Qt::Key_Return,
                                   Qt::Key_Space, Qt::Key_Up,      Qt::Key_Down,   Qt::Key_Left,
                                   Qt::Key_Right, Qt::Key_Home,    Qt::Key_End,    Qt::Key_Delete};
}

std::string nameOf(const QWidget* widget) {
    if (widget == nullptr)
        return "nothing";
    std::string name = widget->metaObject()->className();
    for (const QWidget* each = widget; each != nullptr; each = each->parentWidget())
        if (!each->objectName().isEmpty())
            return name + " in " + each->objectName().toStdString();
    return name;
}

std::string sizeWords(const QWidget& window) {
    return std::to_string(window.width()) + "x" + std::to_string(window.height());
}

void settle() {
    QCoreApplication::sendPostedEvents();
    QCoreApplication::processEvents();
}

bool isTyping() {
    return qobject_cast<const QLineEdit*>(QApplication::focusWidget()) != nullptr;
}

int failuresSoFar() {
    return testing::UnitTest::GetInstance()->current_test_info()->result()->total_part_count();
}

} // namespace

void KeyboardWalk::TearDown() {
    m_window.reset();
}

// ── shops ─────────────────────────────────────────────────────────────────────────────────────────────

std::filesystem::path KeyboardWalk::demo() {
    const auto demo = path().parent_path() / "demo.holdfast";
    valueOf(db::makeDemoShop(demo, now().today()));
    return demo;
}

std::filesystem::path KeyboardWalk::longNames() {
    const std::string longest = "Überlangärmelstrickjackenträgerinnenvereinsfestausstattung";
    reopen();
    UsualShop usual = stockUsualShop();
    usual.style = addStyle(longest, [&](BlankStyle& style) {
        style.colours = {{{}, longest.substr(0, 40), 0x66754c}, {{}, "Chalk", 0xf1efe6}};
    });
    usual.moss = coloursOf(usual.style).at(0).id;
    usual.film = addFilm(longest.substr(0, 40), [&](Film& film) { film.finish = longest; });
    usual.place = addPlace(longest);
    usual.roll = receiveRoll(usual.film, usual.place);
    usual.press = addPress(longest);
    wash(receiveBlanks(usual.style, "M", usual.moss, 6), 6);
    receiveBlanks(usual.style, "L", usual.moss, 4);
    const auto worded = [&](const std::string& size) {
        GarmentDraft garment = aGarment(usual, size);
        garment.decals.front().content = Wording{longest};
        return garment;
    };
    const auto atThePress = takeOrder({worded("M"), worded("M")}, longest + " Saltmarsh Rowing");
    cut(garmentsOf(atThePress.id).front(), usual.roll);
    takeOrder({worded("L"), aGarment(usual)}, longest);
    const auto handedOver = takeOrder({aGarment(usual)}, longest);
    cut(garmentsOf(handedOver.id).front(), usual.roll);
    ShopFixture::press(garmentsOf(handedOver.id).front());
    close();
    return path();
}

void KeyboardWalk::openWindow(const std::filesystem::path& shop, QSize size) {
    m_window.reset();
    m_window = std::make_unique<MainWindow>(time().clock());
    m_window->open(valueOf(db::Shop::open(shop, time().clock().now)));
    showWindow(*m_window, size);
}

void KeyboardWalk::setSize(QSize size) {
    m_window->resize(size);
    settle();
    ASSERT_EQ(m_window->size(), size);
}

std::int64_t KeyboardWalk::entries() {
    return shop().connection().number("SELECT COUNT(*) FROM journal_entry");
}

KeyboardWalk::Tally& KeyboardWalk::begin(const std::string& what) {
    m_failuresBefore = failuresSoFar();
    m_tally = &m_tallies[what];
    return *m_tally;
}

void KeyboardWalk::end() {
    m_tally->failures += failuresSoFar() - m_failuresBefore;
}

void KeyboardWalk::say(const std::string& shop) const {
    Tally all;
    std::printf("%s:\n", shop.c_str());
    for (const auto& [what, tally] : m_tallies) {
        std::printf("  %-14s %4d states %5d keys %3d acts written and undone %3d failures\n", what.c_str(),
                    tally.states, tally.presses, tally.acts, tally.failures);
        all.presses += tally.presses;
        all.acts += tally.acts;
    }
    std::printf("  %d keys pressed, %d acts written and undone\n", all.presses, all.acts);
    RecordProperty("presses", all.presses);
}

// ── what must be so after each key ────────────────────────────────────────────────────────────────────

// The keyboard is somewhere that is seen, and on the frame only where Tab led.
void KeyboardWalk::expectKeyboard(const std::string& after, bool byTab) {
    QWidget* focused = QApplication::focusWidget();
    ASSERT_NE(focused, nullptr) << after << ": nothing has the keyboard";
    EXPECT_TRUE(canHaveKeyboard(focused)) << after << ": " << nameOf(focused) << " is gone";
    if (byTab)
        return;
    const QWidget* rail = m_window->findChild<QWidget*>(QStringLiteral("rail"));
    EXPECT_FALSE(rail->isAncestorOf(focused)) << after << ": the keyboard is on the rail";
    EXPECT_NE(focused, m_window->window()) << after << ": the keyboard is on the window";
}

// What was written is the line at the foot, and was not typed into something.
void KeyboardWalk::expectAnnounced(std::int64_t before, bool wasTyping, const std::string& after) {
    if (entries() == before)
        return;
    EXPECT_FALSE(wasTyping) << after << ": an act while something was typed";
    const auto last = shop().recent(1);
    ASSERT_FALSE(last.empty());
    EXPECT_FALSE(workshop().foot()->isFailure()) << after;
    EXPECT_FALSE(workshop().foot()->words().isEmpty())
        << after << ": nothing says “" << last.front().title << "”";
    ++m_tally->acts;
}

// Each stop once, and within one column never upwards.
void KeyboardWalk::expectTabReads(QWidget* part, const std::string& where) {
    const QVector<QWidget*> stops = tabStops(part);
    ASSERT_LT(stops.size(), kMostStops) << where;
    for (qsizetype at = 1; at < stops.size(); ++at) {
        const QRect one(stops[at - 1]->mapTo(m_window.get(), QPoint()), stops[at - 1]->size());
        const QRect two(stops[at]->mapTo(m_window.get(), QPoint()), stops[at]->size());
        const bool isSameColumn = two.left() < one.right() && one.left() < two.right();
        if (!isSameColumn || stops[at - 1]->parentWidget() != stops[at]->parentWidget())
            continue;
        EXPECT_GE(two.center().y(), one.top())
            << where << ": Tab goes up from " << nameOf(stops[at - 1]) << " to " << nameOf(stops[at]);
    }
}

// What has the keyboard is seen in each part that scrolls.
void KeyboardWalk::expectInView(const std::string& after) {
    QWidget* focused = QApplication::focusWidget();
    ASSERT_NE(focused, nullptr) << after;
    // A list is covered by what it scrolls.
    const auto* list = qobject_cast<QAbstractScrollArea*>(focused);
    const QWidget* front = list != nullptr ? list->viewport() : focused;
    EXPECT_FALSE(front->visibleRegion().isEmpty()) << after << ": " << nameOf(focused) << " is out of sight";
    for (const QWidget* above = focused->parentWidget(); above != nullptr; above = above->parentWidget()) {
        const auto* scroll = qobject_cast<const QScrollArea*>(above);
        if (scroll == nullptr)
            continue;
        const QRect seen = scroll->viewport()->rect();
        const QRect box(focused->mapTo(scroll->viewport(), QPoint()), focused->size());
        // Whole where it takes no more than half of the room; of what is larger the part that matters.
        const bool fits = box.height() <= seen.height() / 2;
        const bool isWhole = seen.top() <= box.top() && box.bottom() <= seen.bottom();
        EXPECT_TRUE(fits ? isWhole : seen.intersects(box))
            << after << ": " << nameOf(focused) << " is cut in " << nameOf(scroll) << ", " << box.left()
            << " to " << box.right() << " of " << seen.width() << " and " << box.top() << " to "
            << box.bottom() << " of " << seen.height();
    }
}

// ── walks ─────────────────────────────────────────────────────────────────────────────────────────────

void KeyboardWalk::press(Qt::Key key, const std::string& where) {
    QWidget* focused = QApplication::focusWidget();
    ASSERT_NE(focused, nullptr) << where;
    const std::string after =
        where + ", " + QKeySequence(key).toString().toStdString() + " in " + nameOf(focused);
    const auto before = entries();
    const bool wasTyping = isTyping() && key != Qt::Key_Return;
    const bool isTab = key == Qt::Key_Tab || key == Qt::Key_Backtab;
    QTest::keyClick(focused, key);
    settle();
    ++m_tally->presses;
    // A key may ask the system for the name of a file; nobody answers here.
    if (QWidget* asking = QApplication::activeModalWidget(); asking != nullptr) {
        asking->close();
        m_window->activateWindow();
        settle();
    }
    if (m_window->workshop() == nullptr)
        return;
    expectKeyboard(after, isTab);
    expectAnnounced(before, wasTyping, after);
}

// As it was before the key: what was written is undone, what was opened is closed.
void KeyboardWalk::restore(const BuiltPlace& built, std::int64_t before) {
    workshop().slipEdge()->close();
    for (int undone = 0; entries() > before && undone < 3; ++undone) {
        const auto last = shop().lastUndoable();
        if (!last || !shop().undo(last->id).ok())
            break;
    }
    workshop().turnTo(built.name);
    settle();
}

void KeyboardWalk::walkPlaces(const std::string& shop) {
    for (const BuiltPlace& built : builtPlaces()) {
        const std::string where = shop + ", " + built.title + " at " + sizeWords(*m_window);
        begin(built.title);
        workshop().turnTo(built.name);
        settle();
        expectKeyboard(where + " opened", false);
        expectTabReads(workshop().place(), where);
        ++m_tally->states;
        for (const Qt::Key key : allKeys()) {
            const auto before = entries();
            press(key, where);
            if (m_window->workshop() == nullptr)
                return;
            restore(built, before);
        }
        walkStops(built, where);
        end();
    }
}

// Every stop once more, with the keys that hurt most where something else is meant.
void KeyboardWalk::walkStops(const BuiltPlace& built, const std::string& where) {
    const auto stops = tabStops(workshop().place()).size();
    for (qsizetype at = 0; at < stops && at < kMostStops; ++at) {
        ++m_tally->states;
        for (const Qt::Key key : {Qt::Key_K, Qt::Key_5, Qt::Key_Escape}) {
            const auto now = tabStops(workshop().place());
            if (at >= now.size())
                continue;
            now[at]->setFocus(Qt::TabFocusReason);
            const auto before = entries();
            press(key, where + ", stop " + std::to_string(at));
            restore(built, before);
        }
    }
}

template <class Walk>
void KeyboardWalk::eachSlip(const std::string& shop, const Walk& walk) {
    const SlipTarget usual = matterOf(*open().shop());
    begin("forms");
    for (int name = 0; name <= static_cast<int>(SlipName::Settings); ++name) {
        const auto slip = static_cast<SlipName>(name);
        const SlipTarget matter = matterFor(slip, open(), usual);
        workshop().turnTo(PlaceName::OrderBook);
        workshop().showSlip(slip, matter);
        settle();
        if (workshop().slipEdge()->isOpen())
            walk(shop + ", form " + std::to_string(name) + " at " + sizeWords(*m_window));
    }
    end();
}

void KeyboardWalk::walkSlips(const std::string& shop) {
    eachSlip(shop, [this](const std::string& where) {
        expectKeyboard(where + " opened", false);
        EXPECT_TRUE(workshop().slipEdge()->hasKeyboard()) << where;
        expectTabReads(workshop().slipEdge(), where);
        walkSlip(where);
    });
}

void KeyboardWalk::walkSlip(const std::string& where) {
    const auto before = entries();
    const auto stops = tabStops(workshop().slipEdge()).size();
    for (qsizetype at = 0; at < stops && workshop().slipEdge()->isOpen(); ++at) {
        const auto now = tabStops(workshop().slipEdge());
        if (at >= now.size())
            break;
        ++m_tally->states;
        now[at]->setFocus(Qt::TabFocusReason);
        for (const Qt::Key key : {Qt::Key_K, Qt::Key_5, Qt::Key_Tab, Qt::Key_Backtab})
            if (workshop().slipEdge()->isOpen())
                press(key, where + ", stop " + std::to_string(at));
    }
    EXPECT_EQ(entries(), before) << where << ": letters acted";
    if (!workshop().slipEdge()->isOpen())
        return;
    for (int times = 0; times < 2 && workshop().slipEdge()->isOpen(); ++times) // a list in it may close first
        press(Qt::Key_Escape, where);
    EXPECT_FALSE(workshop().slipEdge()->isOpen()) << where << ": Escape does not leave it";
}

// From the first stop of the part on until it comes round: to each of its stops, and never to one twice.
void KeyboardWalk::tabRound(QWidget* part, const std::string& where) {
    expectTabReads(part, where);
    const QVector<QWidget*> stops = tabStops(part);
    if (stops.size() < 2)
        return;
    stops.front()->setFocus(Qt::TabFocusReason);
    settle();
    ++m_tally->states;
    QSet<QWidget*> met;
    int within = 0;
    for (QWidget* now = stops.front(); !met.contains(now) || within > 0; now = QApplication::focusWidget()) {
        ASSERT_LT(met.size(), kMostStops) << where;
        met.insert(now);
        expectInView(where);
        press(Qt::Key_Tab, where);
        // A stop may take Tab for its own parts, but not for ever.
        within = QApplication::focusWidget() == now ? within + 1 : 0;
        ASSERT_LT(within, kWithinAStop) << where << ": Tab does not leave " << nameOf(now);
    }
    EXPECT_EQ(QApplication::focusWidget(), stops.front()) << where << ": Tab does not come round";
    for (QWidget* stop : stops)
        EXPECT_TRUE(met.contains(stop)) << where << ": Tab passes over " << nameOf(stop);
}

void KeyboardWalk::tabThroughPlaces(const std::string& shop) {
    for (const BuiltPlace& built : builtPlaces()) {
        begin(built.title);
        workshop().turnTo(built.name);
        settle();
        tabRound(workshop().place(), shop + ", " + built.title + " at " + sizeWords(*m_window));
        end();
    }
}

void KeyboardWalk::tabThroughSlips(const std::string& shop) {
    eachSlip(shop, [this](const std::string& where) { tabRound(workshop().slipEdge(), where); });
}

} // namespace holdfast::app::test
