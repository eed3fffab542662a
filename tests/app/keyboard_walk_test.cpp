// A walk over every place and every form by machine: in each state each key is pressed, and the keyboard must
// stand where work goes on, Tab must go on as the eye reads, and nothing may be written that the screen does
// not say. In an empty shop, in the demo's, and with names as long as they may be.

#include "app/command_line/tour_matters.h"
#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/reading_order.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "db/actions/shop_actions.h"
#include "db/demo/demo_shop.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QLineEdit>
#include <QTest>

namespace holdfast::app {
namespace {

using namespace std::chrono_literals;
using test::ShopFixture;

constexpr int kMostStops = 200;

QVector<Qt::Key> lettersAndDigits() {
    QVector<Qt::Key> keys;
    for (int key = Qt::Key_A; key <= Qt::Key_Z; ++key)
        keys.append(static_cast<Qt::Key>(key));
    for (int key = Qt::Key_0; key <= Qt::Key_9; ++key)
        keys.append(static_cast<Qt::Key>(key));
    return keys;
}

QVector<Qt::Key> allKeys() {
    return lettersAndDigits() + QVector<Qt::Key>{Qt::Key_Tab,    Qt::Key_Backtab, Qt::Key_Escape,
                                                 Qt::Key_Return, Qt::Key_Space,   Qt::Key_Up,
                                                 Qt::Key_Down,   Qt::Key_Left,    Qt::Key_Right,
                                                 Qt::Key_Home,   Qt::Key_End,     Qt::Key_Delete};
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

class KeyboardWalk : public ShopFixture {
protected:
    void SetUp() override { close(); }
    void TearDown() override { m_window.reset(); }

    void openWindow(const std::filesystem::path& shop) {
        m_window.reset();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(shop, time().clock().now)));
        test::showWindow(*m_window);
    }
    std::filesystem::path demo() {
        const auto path = this->path().parent_path() / "demo.holdfast";
        test::valueOf(db::makeDemoShop(path, now().today()));
        return path;
    }

    Workshop& workshop() { return *m_window->workshop(); }
    ShopDesk& open() { return *m_window->desk(); }
    db::Shop& shop() { return open().file(); }
    std::int64_t entries() { return shop().connection().number("SELECT COUNT(*) FROM journal_entry"); }
    static void settle() {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }

    bool isTyping() const {
        const QWidget* focused = QApplication::focusWidget();
        return qobject_cast<const QLineEdit*>(focused) != nullptr;
    }

    // The keyboard is somewhere that is seen, and on the frame only where Tab led.
    void expectKeyboard(const std::string& after, bool byTab) {
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
    void expectAnnounced(std::int64_t before, bool wasTyping, const std::string& after) {
        if (entries() == before)
            return;
        EXPECT_FALSE(wasTyping) << after << ": an act while something was typed";
        const auto last = shop().recent(1);
        ASSERT_FALSE(last.empty());
        EXPECT_FALSE(workshop().foot()->isFailure()) << after;
        EXPECT_FALSE(workshop().foot()->words().isEmpty())
            << after << ": nothing says “" << last.front().title << "”";
        ++m_acts;
    }

    void press(Qt::Key key, const std::string& where) {
        QWidget* focused = QApplication::focusWidget();
        ASSERT_NE(focused, nullptr) << where;
        const std::string after =
            where + ", " + QKeySequence(key).toString().toStdString() + " in " + nameOf(focused);
        const auto before = entries();
        const bool wasTyping = isTyping() && key != Qt::Key_Return;
        const bool isTab = key == Qt::Key_Tab || key == Qt::Key_Backtab;
        QTest::keyClick(focused, key);
        settle();
        ++m_presses;
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
    void restore(const BuiltPlace& built, std::int64_t before) {
        workshop().slipEdge()->close();
        for (int undone = 0; entries() > before && undone < 3; ++undone) {
            const auto last = shop().lastUndoable();
            if (!last || !shop().undo(last->id).ok())
                break;
        }
        workshop().turnTo(built.name);
        settle();
    }

    // Tab comes round, meets every stop once, and reads on: within one column never upwards.
    void expectTabReads(QWidget* part, const std::string& where) {
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

    void walkPlaces(const std::string& shopName) {
        for (const BuiltPlace& built : builtPlaces()) {
            const std::string where = shopName + ", " + built.title;
            workshop().turnTo(built.name);
            settle();
            expectKeyboard(where + " opened", false);
            expectTabReads(workshop().place(), where);
            for (const Qt::Key key : allKeys()) {
                const auto before = entries();
                press(key, where);
                if (m_window->workshop() == nullptr)
                    return;
                restore(built, before);
            }
            walkStops(built, where);
        }
    }

    // Every stop once more, with the keys that hurt most where something else is meant.
    void walkStops(const BuiltPlace& built, const std::string& where) {
        const auto stops = tabStops(workshop().place()).size();
        for (qsizetype at = 0; at < stops && at < kMostStops; ++at)
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

    void walkSlips(const std::string& shopName) {
        const Matter usual = matterOf(*open().shop());
        for (int name = 0; name <= static_cast<int>(SlipName::Settings); ++name) {
            const auto slip = static_cast<SlipName>(name);
            const Matter matter = matterFor(slip, open(), usual);
            const std::string where = shopName + ", form " + std::to_string(name);
            workshop().turnTo(PlaceName::OrderBook);
            workshop().showSlip(slip, matter);
            settle();
            if (!workshop().slipEdge()->isOpen())
                continue;
            expectKeyboard(where + " opened", false);
            EXPECT_TRUE(workshop().slipEdge()->hasKeyboard()) << where;
            expectTabReads(workshop().slipEdge(), where);
            walkSlip(where);
        }
    }

    void walkSlip(const std::string& where) {
        const auto before = entries();
        const auto stops = tabStops(workshop().slipEdge()).size();
        for (qsizetype at = 0; at < stops && workshop().slipEdge()->isOpen(); ++at) {
            const auto now = tabStops(workshop().slipEdge());
            if (at >= now.size())
                break;
            now[at]->setFocus(Qt::TabFocusReason);
            for (const Qt::Key key : {Qt::Key_K, Qt::Key_5, Qt::Key_Tab, Qt::Key_Backtab})
                if (workshop().slipEdge()->isOpen())
                    press(key, where + ", stop " + std::to_string(at));
        }
        EXPECT_EQ(entries(), before) << where << ": letters acted";
        if (!workshop().slipEdge()->isOpen())
            return;
        for (int times = 0; times < 2 && workshop().slipEdge()->isOpen();
             ++times) // a list in it may close first
            press(Qt::Key_Escape, where);
        EXPECT_FALSE(workshop().slipEdge()->isOpen()) << where << ": Escape does not leave it";
    }

    void say(const char* shopName) {
        RecordProperty("presses", m_presses);
        std::printf("%s: %d keys pressed, %d acts written and undone\n", shopName, m_presses, m_acts);
    }

    std::unique_ptr<MainWindow> m_window;
    int m_presses = 0;
    int m_acts = 0;
};

TEST_F(KeyboardWalk, PlacesOfAnEmptyShop) {
    openWindow(path());
    walkPlaces("empty");
    say("empty");
}

TEST_F(KeyboardWalk, FormsOfAnEmptyShop) {
    openWindow(path());
    walkSlips("empty");
    say("empty");
}

TEST_F(KeyboardWalk, PlacesOfTheDemo) {
    openWindow(demo());
    walkPlaces("demo");
    say("demo");
}

TEST_F(KeyboardWalk, FormsOfTheDemo) {
    openWindow(demo());
    walkSlips("demo");
    say("demo");
}

} // namespace
} // namespace holdfast::app
