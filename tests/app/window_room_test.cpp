// SPDX-License-Identifier: GPL-3.0-or-later
// Every place and every form in windows of many sizes: no part lies over another, none reaches out of what
// holds it, and none is smaller than what is in it needs.

#include "app/command_line/tour_matters.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/theme/focus_ring.h"
#include "app/widgets/label.h"
#include "app/widgets/sewn_tabs.h"
#include "db/demo/demo_shop.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QApplication>
#include <QLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>
#include <QTest>

#include <set>

namespace holdfast::app {
namespace {

using test::ShopFixture;

// Windows as they are on screens of 1366 × 768 at 1, 1.25, 1.5 and 2, of 1024 × 600, of 800 × 1280, and of
// 1024 × 600 with text of 125 %.
constexpr QSize kWindows[] = {{1366, 730}, {1092, 582}, {910, 484}, {683, 356},
                              {1024, 562}, {800, 1242}, {819, 450}};

constexpr int kLeastScrolling = 40; // of a list or an editor

std::string sizeWords(const QSize& size) {
    return std::to_string(size.width()) + " × " + std::to_string(size.height());
}

// By its class and name, and what it is in.
std::string partWords(const QWidget& part) {
    std::string said = part.metaObject()->className();
    if (!part.objectName().isEmpty())
        said += " " + part.objectName().toStdString();
    const QString name = part.accessibleName().left(30);
    if (!name.isEmpty())
        said += " “" + name.toStdString() + "”";
    for (const QWidget* above = part.parentWidget(); above != nullptr; above = above->parentWidget())
        if (!above->objectName().isEmpty() && !above->objectName().startsWith(QLatin1String("qt_")))
            return said + " in " + above->objectName().toStdString();
    return said;
}

class WindowRoom : public ShopFixture {
protected:
    void SetUp() override { close(); }
    void TearDown() override { m_window.reset(); }

    void openWindow(const std::filesystem::path& shop) {
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
    static void settle() {
        for (int round = 0; round < 3; ++round) {
            QCoreApplication::sendPostedEvents();
            QCoreApplication::processEvents();
        }
    }

    // What lies over others by its nature.
    static bool liesOver(const QWidget& part) {
        return part.testAttribute(Qt::WA_TransparentForMouseEvents) ||
               part.inherits("holdfast::app::SlipEdge") || part.inherits("holdfast::app::CommandFinder") ||
               qobject_cast<const SewnTabs*>(&part) != nullptr || part.inherits("holdfast::app::FocusRing");
    }
    // The room of a place shares the gutter below the place with the foot.
    bool isShared(const QWidget& one, const QWidget& two, int high) const {
        constexpr int kGutterShared = 12;
        const bool areThey =
            (one.objectName() == QLatin1String("placeRoom") &&
             two.objectName() == QLatin1String("footLine")) ||
            (two.objectName() == QLatin1String("placeRoom") && one.objectName() == QLatin1String("footLine"));
        return areThey && high <= kGutterShared;
    }
    static bool isScrolled(const QWidget& part) {
        const auto* area =
            part.parentWidget() == nullptr
                ? nullptr
                : qobject_cast<const QAbstractScrollArea*>(part.parentWidget()->parentWidget());
        return area != nullptr && area->viewport() == part.parentWidget();
    }

    void expectApart(const QWidget& parent) {
        if (qobject_cast<const QAbstractScrollArea*>(&parent) != nullptr)
            return; // it lays its bars over its corner itself
        std::vector<const QWidget*> parts;
        for (const QObject* child : parent.children())
            if (const auto* part = qobject_cast<const QWidget*>(child);
                part != nullptr && part->isVisible() && !part->isWindow() && !liesOver(*part))
                parts.push_back(part);
        for (std::size_t one = 0; one < parts.size(); ++one)
            for (std::size_t two = one + 1; two < parts.size(); ++two) {
                const QRect shared = parts[one]->geometry() & parts[two]->geometry();
                if (shared.width() > 1 && shared.height() > 1 &&
                    !isShared(*parts[one], *parts[two], shared.height()))
                    fault(partWords(*parts[one]) + " lies over " + partWords(*parts[two]) + " by " +
                          std::to_string(shared.width()) + " × " + std::to_string(shared.height()));
            }
    }

    void expectWhole(const QWidget& part) {
        const QWidget* parent = part.parentWidget();
        if (parent != nullptr && !isScrolled(part) &&
            !parent->rect().adjusted(-1, -1, 1, 1).contains(part.geometry())) {
            fault(partWords(part) + " reaches out of " + parent->metaObject()->className() + " " +
                  sizeWords(parent->size()) + ", which needs " + sizeWords(parent->minimumSizeHint()));
        }
        // What scrolls up and down only is cut at the sides where it is wider than what it is seen in.
        if (const auto* scroll = qobject_cast<const QScrollArea*>(&part);
            scroll != nullptr && scroll->widget() != nullptr &&
            scroll->horizontalScrollBarPolicy() == Qt::ScrollBarAlwaysOff &&
            scroll->widget()->width() > scroll->viewport()->width() + 1)
            fault(partWords(part) + " is " + std::to_string(scroll->viewport()->width()) +
                  " wide, and what is in it " + std::to_string(scroll->widget()->width()));
        const QSize least = part.minimumSizeHint();
        // A stack needs what the widest of its pages does; the one that is shown is looked at itself.
        if (qobject_cast<const QStackedWidget*>(&part) != nullptr)
            return;
        if (part.width() < least.width() - 1)
            fault(partWords(part) + " is " + std::to_string(part.width()) + " wide, and needs " +
                  std::to_string(least.width()));
        const bool hasBroken = part.hasHeightForWidth() && qobject_cast<const Label*>(&part) != nullptr;
        const QLayout* layout = part.layout();
        const int high = hasBroken ? part.heightForWidth(part.width())
                         : layout != nullptr && layout->hasHeightForWidth()
                             ? std::min(least.height(), layout->totalMinimumHeightForWidth(part.width()))
                             : least.height();
        // What scrolls itself may be lower than all that is in it.
        const auto* scrolling = qobject_cast<const QAbstractScrollArea*>(&part);
        const bool scrolls = part.objectName().startsWith(QLatin1String("qt_scrollarea")) ||
                             part.objectName() == QLatin1String("orderSheet") ||
                             (scrolling != nullptr && part.height() >= kLeastScrolling);
        if (!scrolls && part.height() < high - 1)
            fault(partWords(part) + " is " + std::to_string(part.height()) + " high, and needs " +
                  std::to_string(high));
    }

    // Head and foot lay themselves out, and have tests of their own.
    static bool isFrame(const QWidget& part) {
        return part.inherits("holdfast::app::PlaceHeader") || part.inherits("holdfast::app::FootLine");
    }

    void lookAt(const QWidget& part) {
        if (!part.isVisible() || qobject_cast<const QScrollBar*>(&part) != nullptr || isFrame(part))
            return;
        expectApart(part);
        for (const QObject* child : part.children())
            if (const auto* inner = qobject_cast<const QWidget*>(child);
                inner != nullptr && inner->isVisible() && !inner->isWindow()) {
                if (!isFrame(*inner) && (!liesOver(*inner) || inner->inherits("holdfast::app::SlipEdge")))
                    expectWhole(*inner);
                // The cells of a list are its own to lay.
                if (qobject_cast<const QAbstractItemView*>(inner) == nullptr)
                    lookAt(*inner);
            }
        ++m_looked;
    }

    void fault(const std::string& words) {
        if (m_faults.insert(words).second)
            ADD_FAILURE() << m_where << ": " << words;
    }

    void lookAtPlaces(const std::string& shopName) {
        for (const QSize& size : kWindows) {
            m_window->resize(size);
            for (const BuiltPlace& built : builtPlaces()) {
                if (built.name == PlaceName::FairTable)
                    continue; // fair_table_room_test measures it
                workshop().turnTo(built.name);
                settle();
                m_where = shopName + ", " + built.code + " at " + sizeWords(size);
                lookAt(*m_window);
            }
        }
        std::printf("%s: %d parts looked at\n", shopName.c_str(), m_looked);
    }

    // At a scale of 2 on 1366 × 768, the narrowest that is met.
    void expectNoneScrollsSideways(const std::string& shopName) {
        m_window->resize({683, 356});
        for (const BuiltPlace& built : builtPlaces()) {
            workshop().turnTo(built.name);
            settle();
            const auto* room = m_window->findChild<QScrollArea*>(QStringLiteral("placeRoom"));
            ASSERT_NE(room, nullptr);
            EXPECT_EQ(room->horizontalScrollBar()->maximum(), 0)
                << shopName << ", " << built.code << " needs "
                << workshop().place()->minimumSizeHint().width() << " of " << room->viewport()->width();
        }
    }

    void lookAtForms(const std::string& shopName) {
        const SlipTarget usual = matterOf(*m_window->desk()->shop());
        for (const QSize& size : {QSize(1024, 562), QSize(683, 356)}) {
            m_window->resize(size);
            for (int name = 0; name <= static_cast<int>(SlipName::Settings); ++name) {
                const auto slip = static_cast<SlipName>(name);
                workshop().turnTo(PlaceName::OrderBook);
                workshop().showSlip(slip, matterFor(slip, *m_window->desk(), usual));
                settle();
                if (!workshop().slipEdge()->isOpen())
                    continue;
                m_where = shopName + ", form " + std::to_string(name) + " at " + sizeWords(size);
                lookAt(*workshop().slipEdge());
                expectVerb();
                workshop().slipEdge()->close();
            }
        }
    }

    // The key of a form says what it does.
    void expectVerb() {
        static const std::set<QString> kVerbs = {
            QStringLiteral("Add"),    QStringLiteral("Back"),    QStringLiteral("Book"),
            QStringLiteral("Bring"),  QStringLiteral("Cancel"),  QStringLiteral("Change"),
            QStringLiteral("Choose"), QStringLiteral("Confirm"), QStringLiteral("Correct"),
            QStringLiteral("Cut"),    QStringLiteral("Hang"),    QStringLiteral("Import"),
            QStringLiteral("Lay"),    QStringLiteral("Let"),     QStringLiteral("Look"),
            QStringLiteral("Make"),   QStringLiteral("Mark"),    QStringLiteral("Move"),
            QStringLiteral("Pay"),    QStringLiteral("Press"),   QStringLiteral("Read"),
            QStringLiteral("Record"), QStringLiteral("Save"),    QStringLiteral("Set"),
            QStringLiteral("Take"),   QStringLiteral("Use"),     QStringLiteral("Wash"),
            QStringLiteral("Write")};
        const auto* key = workshop().slipEdge()->findChild<QAbstractButton*>(QStringLiteral("slipAction"));
        if (key == nullptr)
            return;
        EXPECT_TRUE(kVerbs.contains(key->text().section(u' ', 0, 0)))
            << m_where << ": “" << key->text().toStdString() << "” begins with no verb";
    }

    std::unique_ptr<MainWindow> m_window;
    std::string m_where;
    std::set<std::string> m_faults;
    int m_looked = 0;
};

TEST_F(WindowRoom, PlacesOfAnEmptyShop) {
    openWindow(path());
    lookAtPlaces("empty");
    expectNoneScrollsSideways("empty");
}

TEST_F(WindowRoom, PlacesOfTheDemo) {
    openWindow(demo());
    lookAtPlaces("demo");
    expectNoneScrollsSideways("demo");
}

// The questions come after the place, once the figures are read: they are given their room then.
TEST_F(WindowRoom, QuestionsOfTheFiguresAreWholeFromTheFirst) {
    openWindow(demo());
    m_window->resize({819, 450});
    workshop().turnTo(PlaceName::Figures);
    const auto* questions = workshop().place()->findChild<QWidget*>(QStringLiteral("questions"));
    ASSERT_NE(questions, nullptr);
    QTRY_VERIFY(!questions->findChildren<QAbstractButton*>().isEmpty());
    settle();
    m_where = "figures";
    lookAt(*m_window);
}

// A place in a window that is too small for it begins with its head, whatever has the keyboard in it; where
// the keyboard is is seen as well.
TEST_F(WindowRoom, PlacesOpenAtTheirHead) {
    openWindow(demo());
    for (const QSize& size : {QSize(1024, 562), QSize(910, 484)}) {
        m_window->resize(size);
        for (const BuiltPlace& built : builtPlaces()) {
            workshop().turnTo(built.name);
            settle();
            QWidget* focused = QApplication::focusWidget();
            ASSERT_NE(focused, nullptr) << built.code;
            if (const auto* list = qobject_cast<const QAbstractScrollArea*>(focused);
                list != nullptr && built.name == PlaceName::CuttingBench) {
                EXPECT_EQ(list->verticalScrollBar()->value(), 0) << "the roll is named above its film";
            }
            for (QWidget* above = focused->parentWidget(); above != nullptr; above = above->parentWidget())
                if (const auto* area = qobject_cast<const QScrollArea*>(above)) {
                    const int top = focused->mapTo(area->widget(), QPoint()).y();
                    const bool isBelow = top + focused->height() > area->viewport()->height() &&
                                         focused->height() < area->viewport()->height() / 2;
                    EXPECT_TRUE(isBelow || area->verticalScrollBar()->value() == 0)
                        << built.code << " at " << sizeWords(size) << ": " << partWords(*area);
                }
        }
    }
}

TEST_F(WindowRoom, FormsOfTheDemo) {
    openWindow(demo());
    lookAtForms("demo");
}

} // namespace
} // namespace holdfast::app
