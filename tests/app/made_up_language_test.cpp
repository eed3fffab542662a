// SPDX-License-Identifier: GPL-3.0-or-later
// The window in a language that nobody speaks, with longer words and the numbers and days of Poland: every
// place, question, sheet and form is painted, and each text that is painted is looked at. English in it was
// never offered to a translator; a decimal point was not written by the language's locale; what is cut had no
// room.

#include "app/command_line/tour_backups.h"
#include "app/command_line/tour_matters.h"
#include "app/desk/window_language.h"
#include "app/places/back_room/back_room_place.h"
#include "app/places/cutting_bench/cutting_bench_place.h"
#include "app/places/figures/figures_place.h"
#include "app/shell/command_finder.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/widgets/label.h"
#include "core/trade/enumerators.h"
#include "db/demo/demo_shop.h"
#include "db/sqlite/query.h"
#include "tests/app/made_up_language.h"
#include "tests/app/painted_texts.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractScrollArea>
#include <QApplication>
#include <QLineEdit>
#include <QRegularExpression>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

#include <optional>
#include <set>

namespace holdfast::app {
namespace {

using test::PaintedText;

template <class Enum>
std::vector<Enum> each() {
    std::vector<Enum> all;
    for (std::size_t at = 0; at < enumeratorCount<Enum>(); ++at)
        all.push_back(static_cast<Enum>(at));
    return all;
}

class MadeUp : public test::ShopFixture {
protected:
    static void SetUpTestSuite() {
        s_folder = std::make_unique<QTemporaryDir>();
        const QString ts = s_folder->filePath(QStringLiteral("made_up.ts"));
        test::writtenByLupdate(ts);
        s_language = std::make_unique<test::MadeUpLanguage>(ts);
    }
    static void TearDownTestSuite() {
        s_language.reset();
        s_folder.reset();
    }

    void SetUp() override {
        close();
        setWindowLanguage({s_language.get()});
    }
    void TearDown() override {
        m_window.reset();
        setWindowLanguage();
        BackupsBeside::showInstead(std::nullopt);
        BackRoomPlace::setPrinters(std::nullopt);
        CuttingBenchPlace::setSearchRounds(std::nullopt);
    }

    void openDemo() {
        const auto path = this->path().parent_path() / "demo.holdfast";
        test::valueOf(db::makeDemoShop(path, now().today()));
        BackupsBeside::showInstead(backupsForPictures(now()));
        BackRoomPlace::setPrinters(std::vector<PrintQueue>{});
        CuttingBenchPlace::setSearchRounds(1);
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(path, time().clock().now)));
        test::showWindow(*m_window);
        m_window->resize(1366, 768);
        readNames();
    }
    Workshop& workshop() { return *m_window->workshop(); }

    // What people named, which no translator is asked for.
    void readNames() {
        const auto read = m_window->desk()->file().read([this](db::Connection& connection) {
            for (const char* column : {"value FROM setting",
                                       "name FROM seat",
                                       "name FROM blank_style",
                                       "not_prewashed_because FROM blank_style",
                                       "law_checked_by FROM blank_style",
                                       "supplier FROM blank_style",
                                       "size FROM style_size",
                                       "name FROM style_colour",
                                       "detergent FROM wash_load",
                                       "finish FROM film",
                                       "shade FROM film",
                                       "supplier FROM film",
                                       "recipe_confirmed_by FROM film",
                                       "name FROM storage_place",
                                       "note FROM test_strip",
                                       "name FROM press",
                                       "by_whom FROM press_check",
                                       "name FROM customer",
                                       "taken_at_place FROM shop_order",
                                       "note FROM shop_order",
                                       "artwork FROM decal",
                                       "wording FROM decal",
                                       "confirmed_by FROM decal",
                                       "reason FROM waiver",
                                       "cause FROM spoil",
                                       "note FROM claim",
                                       "name FROM fair",
                                       "note FROM fair"}) {
                db::Query rows{connection, std::string{"SELECT DISTINCT "} + column};
                while (rows.step())
                    if (!rows.isNull(0))
                        for (const QString& word : test::plainWords(QString::fromStdString(rows.text(0))))
                            m_names.insert(word.toLower());
            }
            return true;
        });
        ASSERT_TRUE(read.ok());
    }

    void settle() {
        const auto* bench = qobject_cast<const CuttingBenchPlace*>(workshop().place());
        for (int round = 0; round < 4 || (bench != nullptr && bench->isSearching()); ++round) {
            QCoreApplication::sendPostedEvents();
            QCoreApplication::processEvents();
        }
        m_window->grab(); // lays out what is laid out when it is painted
    }

    void lookAt(const std::string& where) {
        settle();
        m_where = where;
        const auto texts = test::textsPaintedBy(*m_window);
        for (const PaintedText& text : texts) {
            lookAtWords(text);
            lookAtRoom(text);
            for (const PaintedText& other : texts)
                lookAtBoth(text, other);
        }
        m_looked += texts.size();
        const auto* room = m_window->findChild<QScrollArea*>(QStringLiteral("placeRoom"));
        EXPECT_EQ(room->horizontalScrollBar()->maximum(), 0) << where << " is wider than the window";
    }

    void lookAtWords(const PaintedText& text) {
        static const QRegularExpression path(QStringLiteral(R"((/[\w.-]+)+( backups)?)"));
        if (text.widget != nullptr && isNamed(*text.widget, {"shadeCode"}))
            return; // the code of a shade has letters in it, and no words
        for (const QString& word : test::plainWords(QString(text.text).remove(path)))
            if (!m_names.contains(word.toLower()) && !isSameEverywhere(word))
                fault("“" + word.toStdString() + "” is English", text);
        static const QRegularExpression point(QStringLiteral(R"((?<![\d.])\d+\.\d+(?![\d.]))"));
        if (text.text.contains(point))
            fault("a decimal point", text);
        static const QRegularExpression glued(QStringLiteral(R"(\][\d\[])"));
        if (text.text.contains(glued))
            fault("two texts glued together", text);
        if (text.text.contains(u'…') && !mayElide(*text.widget))
            fault("elided", text);
    }

    void lookAtRoom(const PaintedText& text) {
        constexpr qreal kRounding = 1;
        const QRectF room = QRectF(text.widget->rect()).adjusted(-kRounding, 0, kRounding, 0);
        if (text.box.right() > room.right() || text.box.left() < room.left())
            fault("reaches out of its widget", text);
        const bool isInList = qobject_cast<QAbstractScrollArea*>(text.widget->parentWidget()) != nullptr;
        if (!isInList &&
            (text.box.top() < room.top() - kRounding || text.box.bottom() > room.bottom() + kRounding))
            fault("is too high for its widget", text);
        if (!text.clip.isEmpty() && !scrollsSideways(*text.widget) &&
            (text.box.right() > text.clip.right() + kRounding ||
             text.box.left() < text.clip.left() - kRounding))
            fault("is cut", text);
    }

    // A field paints what is selected in it a second time; the head of a run lies over the rows below it.
    void lookAtBoth(const PaintedText& one, const PaintedText& two) {
        const QRectF shared = one.box & two.box;
        if (&one < &two && one.widget == two.widget && one.text != two.text && shared.width() > 2 &&
            shared.height() > 2 && !isNamed(*one.widget, {"walkList"}))
            fault("lies over “" + two.text.toStdString() + "”", one);
    }

    // Names of decals, what can be found, what was done last: they say the whole elsewhere. The words of a
    // field that nothing was typed into give way to the field.
    static bool mayElide(const QWidget& widget) {
        return qobject_cast<const ElidingLabel*>(&widget) != nullptr ||
               qobject_cast<const QLineEdit*>(&widget) != nullptr ||
               isNamed(widget,
                       {"footUndo", "walkList", "garmentLines", "finderList", "shareBar", "figureRows"});
    }
    static bool scrollsSideways(const QWidget& widget) {
        return isNamed(widget, {"railGrid"}) || widget.inherits("holdfast::app::RailHeads");
    }
    // It, or what it is the inside of.
    static bool isNamed(const QWidget& widget, std::initializer_list<const char*> names) {
        const auto isOne = [&](const QWidget* each) {
            return each != nullptr && std::ranges::any_of(names, [&](const char* name) {
                       return each->objectName() == QLatin1String(name);
                   });
        };
        return isOne(&widget) || isOne(widget.parentWidget());
    }

    // Of days and months.
    static const QSet<QString>& polishNames() {
        static const QSet<QString> names = [] {
            const QLocale polish(QLocale::Polish);
            QSet<QString> found;
            for (const auto form : {QLocale::LongFormat, QLocale::ShortFormat}) {
                for (int day = 1; day <= 7; ++day)
                    found.unite(wordSet(polish.dayName(day, form)));
                for (int month = 1; month <= 12; ++month)
                    found.unite(wordSet(polish.monthName(month, form) + QLatin1Char(' ') +
                                        polish.standaloneMonthName(month, form)));
            }
            return found;
        }();
        return names;
    }
    static QSet<QString> wordSet(const QString& text) {
        const QStringList words = test::plainWords(text);
        return {words.begin(), words.end()};
    }

    // Keys, units, codes of files and money, and names of days and months.
    static bool isSameEverywhere(const QString& word) {
        static const QSet<QString> codes{
            QStringLiteral("mm"),   QStringLiteral("cm"),       QStringLiteral("kg"),
            QStringLiteral("min"),  QStringLiteral("Holdfast"), QStringLiteral("SVG"),
            QStringLiteral("PDF"),  QStringLiteral("Ctrl"),     QStringLiteral("Enter"),
            QStringLiteral("Esc"),  QStringLiteral("Space"),    QStringLiteral("Shift"),
            QStringLiteral("Alt"),  QStringLiteral("Del"),      QStringLiteral("Up"),
            QStringLiteral("Down"), QStringLiteral("GBP"),      QStringLiteral("MiB"),
            QStringLiteral("Tab")};
        return codes.contains(word) || polishNames().contains(word);
    }

    void fault(const std::string& what, const PaintedText& text) {
        const std::string words = what + ": “" + text.text.toStdString() + "” by " + text.place.toStdString();
        if (m_faults.insert(words).second)
            ADD_FAILURE() << m_where << ": " << words;
    }

    static std::unique_ptr<QTemporaryDir> s_folder;
    static std::unique_ptr<test::MadeUpLanguage> s_language;

    std::unique_ptr<MainWindow> m_window;
    QSet<QString> m_names;
    std::string m_where;
    std::set<std::string> m_faults;
    std::size_t m_looked = 0;
};

std::unique_ptr<QTemporaryDir> MadeUp::s_folder;
std::unique_ptr<test::MadeUpLanguage> MadeUp::s_language;

TEST_F(MadeUp, PlacesAndForms) {
    openDemo();
    for (const BuiltPlace& built : builtPlaces()) {
        workshop().turnTo(built.name);
        lookAt(built.code);
    }
    workshop().turnTo(PlaceName::Figures);
    auto* figures = qobject_cast<FiguresPlace*>(workshop().place());
    for (const auto question : each<FigureQuestion>()) {
        figures->ask(question);
        lookAt("question " + std::to_string(static_cast<int>(question)));
    }
    workshop().turnTo(PlaceName::BackRoom);
    auto* room = qobject_cast<BackRoomPlace*>(workshop().place());
    for (const auto section : each<RoomSection>()) {
        room->turnToSection(section);
        lookAt("section " + std::to_string(static_cast<int>(section)));
    }
    const SlipTarget usual = matterOf(*m_window->desk()->shop());
    for (const auto slip : each<SlipName>()) {
        workshop().showSlip(slip, matterFor(slip, *m_window->desk(), usual));
        if (!workshop().slipEdge()->isOpen())
            continue;
        lookAt("form " + std::to_string(static_cast<int>(slip)));
        workshop().slipEdge()->close();
    }
    workshop().finder()->open();
    lookAt("finder");
    workshop().finder()->close();
    EXPECT_GT(m_looked, 1000U);
    for (const QString& text : s_language->unknown())
        ADD_FAILURE() << "lupdate does not see “" << text.toStdString() << "”";
}

// What is said where there is nothing yet, and before there is a shop.
TEST_F(MadeUp, EmptyShopAndStart) {
    m_window = std::make_unique<MainWindow>(time().clock());
    m_window->open(db::Shop::createInMemory(time().clock().now));
    test::showWindow(*m_window);
    m_window->resize(1366, 768);
    m_names.insert(QStringLiteral("workshop")); // the shop's name until it is given one
    for (const BuiltPlace& built : builtPlaces()) {
        workshop().turnTo(built.name);
        lookAt(built.code);
    }
    EXPECT_GT(m_looked, 200U);
    m_window = std::make_unique<MainWindow>(time().clock());
    m_window->showStart();
    test::showWindow(*m_window);
    m_where = "start";
    m_window->grab();
    for (const PaintedText& text : test::textsPaintedBy(*m_window)) {
        lookAtWords(text);
        lookAtRoom(text);
    }
}

} // namespace
} // namespace holdfast::app
