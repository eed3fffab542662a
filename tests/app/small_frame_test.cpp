// SPDX-License-Identifier: GPL-3.0-or-later
// The frame about the places, and the start page, in windows of every size: nothing is cut, and nothing lies
// over anything else.

#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/place_header.h"
#include "app/shell/shop_paths.h"
#include "app/shell/shop_start.h"
#include "app/shell/workshop.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/field.h"
#include "db/demo/demo_shop.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <algorithm>
#include <set>

namespace holdfast::app::test {
namespace {

class SmallFrame : public ShopFixture {
protected:
    void TearDown() override { m_window.reset(); }

    void openWindow(const std::filesystem::path& shop) {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(shop, time().clock().now)));
        showWindow(*m_window);
    }
    std::filesystem::path demo() {
        const auto demo = path().parent_path() / "demo.holdfast";
        valueOf(db::makeDemoShop(demo, now().today()));
        return demo;
    }
    void setWidth(int width) {
        m_window->resize(width, 600);
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
    Workshop& workshop() { return *m_window->workshop(); }
    FootLine& foot() { return *workshop().foot(); }
    Button* inFoot(const char* name) { return foot().findChild<Button*>(QLatin1String(name)); }

    void expectFootWhole(const std::string& where) {
        std::vector<QRect> taken{foot().wordsRect()};
        for (const Button* button : foot().findChildren<Button*>())
            if (button->isVisible()) {
                EXPECT_GE(button->width(), button->sizeHint().width()) << where;
                taken.push_back(button->geometry());
            }
        for (std::size_t one = 0; one < taken.size(); ++one) {
            EXPECT_TRUE(foot().rect().contains(taken[one])) << where << ", part " << one << " is cut";
            for (std::size_t other = 0; other < one; ++other)
                EXPECT_FALSE(taken[one].intersects(taken[other]))
                    << where << ", parts " << other << " and " << one;
        }
        EXPECT_EQ(foot().height(), foot().heightForWidth(foot().width())) << where;
        EXPECT_TRUE(inFoot("footFind")->isVisible()) << where;
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(SmallFrame, FootLineLeavesOutWhatMattersLeastAndCutsNothing) {
    openWindow(demo());
    ASSERT_TRUE(workshop().foot() != nullptr);
    // Undo of an older act, and a redo: the most that can be in it.
    const auto last = m_window->desk()->file().lastUndoable();
    ASSERT_TRUE(last.has_value());
    workshop().act(ShellAct::Undo);
    const QString said = QStringLiteral(
        "418-b cannot be taken up: Marram Soft, Dusk needs 150 °C and the blank bears 140 °C.");
    std::set<FootLine::Manner> manners;
    for (int width = 480; width <= 2'560; width += 20) {
        for (const QString& words : {QString(), said}) {
            if (words.isEmpty())
                foot().showLast(m_window->desk()->file());
            else
                foot().showFailure(words);
            setWidth(width);
            expectFootWhole(std::to_string(width) + " wide, “" + foot().words().toStdString() + "”");
            EXPECT_TRUE(inFoot("footUndo")->isVisible()) << width;
            EXPECT_TRUE(inFoot("footRedo")->isVisible()) << width;
            manners.insert(foot().manner());
        }
        foot().showWork(QStringLiteral("Backing up"), 0.4);
        setWidth(width);
        expectFootWhole(std::to_string(width) + " wide, at work");
        foot().finishWork();
    }
    EXPECT_TRUE(manners.contains(FootLine::Manner::Whole));
    EXPECT_GE(manners.size(), 3U);
    setWidth(2'560);
    EXPECT_TRUE(inFoot("footUndo")->text().contains(QLatin1Char(':')))
        << "where there is room, what it undoes";
    setWidth(800);
    EXPECT_EQ(inFoot("footUndo")->text(), QStringLiteral("Undo"));
    EXPECT_FALSE(inFoot("footUndo")->toolTip().isEmpty()) << "its tip says the whole";
}

TEST_F(SmallFrame, HeaderCountsAreWholeAtEveryWidth) {
    openWindow(demo());
    auto* header = m_window->findChild<PlaceHeader*>();
    for (const BuiltPlace& built : builtPlaces()) {
        workshop().turnTo(built.name);
        for (int width = 480; width <= 1'400; width += 40) {
            setWidth(width);
            const std::string where = std::string(built.title) + " at " + std::to_string(width);
            EXPECT_EQ(header->height(), header->heightForWidth(header->width())) << where;
            EXPECT_GE(m_window->findChild<QLabel*>(QStringLiteral("placeTitle"))->width(),
                      m_window->findChild<QLabel*>(QStringLiteral("placeTitle"))->sizeHint().width())
                << where;
            const QWidget* tools = workshop().place()->headerTools();
            if (tools == nullptr)
                continue;
            QList<const QWidget*> parts;
            for (const QWidget* part : tools->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
                if (part->isVisible())
                    parts.append(part);
            parts.append(tools);
            for (const QWidget* part : parts) {
                const QRect box(part->mapTo(header, QPoint()), part->size());
                EXPECT_TRUE(header->rect().contains(box))
                    << where << ": " << part->metaObject()->className() << " is cut";
                if (part != tools || parts.size() == 1) {
                    EXPECT_GE(part->width(), part->sizePolicy().horizontalPolicy() == QSizePolicy::Maximum
                                                 ? part->minimumSizeHint().width()
                                                 : part->sizeHint().width())
                        << where << ": " << part->metaObject()->className() << " is squeezed";
                }
            }
            for (qsizetype one = 0; one + 1 < parts.size(); ++one)
                for (qsizetype other = 0; other < one; ++other)
                    EXPECT_FALSE(parts[one]->geometry().intersects(parts[other]->geometry())) << where;
        }
    }
}

// ── start page ────────────────────────────────────────────────────────────────────────────────────────

class StartPage : public SmallFrame {
protected:
    void SetUp() override {
        std::filesystem::remove_all(defaultShopPath().parent_path());
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->showStart();
        showWindow(*m_window);
    }
    void TearDown() override {
        SmallFrame::TearDown();
        std::filesystem::remove_all(defaultShopPath().parent_path());
    }
    void setSize(QSize size) {
        m_window->resize(size);
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
    // Each part of the page, from the top, with nothing over another and none wider than the window.
    void expectWhole(const std::string& where) {
        for (auto* card : m_window->findChildren<Card*>()) {
            if (!card->isVisible()) // backups, where there is no shop that cannot be read
                continue;
            QList<QWidget*> parts;
            for (auto* field : card->findChildren<Field*>())
                parts.append(field);
            for (auto* button : card->findChildren<Button*>())
                parts.append(button);
            for (auto* label : card->findChildren<QLabel*>())
                if (label->isVisible()) {
                    EXPECT_GE(label->height(), label->heightForWidth(label->width()))
                        << where << ": “" << label->text().toStdString() << "” is cut";
                    parts.append(label);
                }
            for (qsizetype one = 0; one < parts.size(); ++one) {
                const QRect box(parts[one]->mapTo(m_window.get(), QPoint()), parts[one]->size());
                EXPECT_TRUE(box.left() >= 0 && box.right() < m_window->width()) << where;
                for (qsizetype other = 0; other < one; ++other) {
                    const QRect before(parts[other]->mapTo(m_window.get(), QPoint()), parts[other]->size());
                    EXPECT_FALSE(box.intersects(before))
                        << where << ": " << parts[other]->metaObject()->className() << " and "
                        << parts[one]->metaObject()->className();
                }
            }
        }
        for (auto* field : m_window->findChildren<Field*>()) {
            EXPECT_TRUE(QTest::qWaitFor([&] { return field->height() >= field->sizeHint().height(); }, 1'000))
                << where << ": " << field->label().toStdString() << " is " << field->height() << " high";
            const QString hint = field->editor()->placeholderText();
            EXPECT_LE(field->editor()->fontMetrics().horizontalAdvance(hint), field->editor()->width())
                << where << ": the hint is cut";
        }
    }
};

TEST_F(StartPage, IsWholeAndInReachInEverySmallWindow) {
    // 1366 x 768 at text of 160 % is 853 x 480; at a scale of 2 it is 683 x 384.
    for (const QSize size : {QSize(1366, 768), QSize(1024, 600), QSize(800, 1280), QSize(853, 480),
                             QSize(683, 384), QSize(480, 320)}) {
        const std::string where = std::to_string(size.width()) + "x" + std::to_string(size.height());
        setSize(size);
        m_window->start()->begin({});
        setSize(size);
        expectWhole(where);
        m_window->start()->begin(QStringLiteral(
            "~/shop.holdfast is no shop of this program: its first bytes are those of a letter."));
        setSize(size);
        expectWhole(where + " after a refusal");
        m_window->start()->refuse(
            {said("Give the shop a name: it is printed on claim tickets."), "shopName"});
        setSize(size);
        expectWhole(where + " with the name refused");
        auto* field = m_window->findChild<Field*>(QStringLiteral("startName"));
        EXPECT_EQ(QApplication::focusWidget(), field->editor()) << where;
        const auto isSeen = [&] {
            const QRect box(field->mapTo(m_window.get(), QPoint()), field->size());
            return m_window->rect().contains(box);
        };
        EXPECT_TRUE(QTest::qWaitFor(isSeen, 1'000))
            << where << ": the name is out of sight at " << field->mapTo(m_window.get(), QPoint()).y() << ", "
            << field->height() << " high";
    }
}

} // namespace
} // namespace holdfast::app::test
