// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/tour.h"

#include "app/command_line/half_typed_order.h"
#include "app/command_line/tour_backups.h"
#include "app/command_line/tour_matters.h"
#include "app/command_line/tour_papers.h"
#include "app/command_line/verbs.h"
#include "app/places/back_room/back_room_place.h"
#include "app/places/cutting_bench/cutting_bench_place.h"
#include "app/places/figures/figures_place.h"
#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/theme/tokens.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "core/trade/enumerators.h"
#include "db/journal/backup.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QPixmap>
#include <QTemporaryDir>

#include <algorithm>
#include <array>
#include <memory>
#include <system_error>
#include <utility>

namespace holdfast::app {

namespace {

namespace fs = std::filesystem;

constexpr QSize kSize{1366, 768};

// What is set going when a place opens has its say before the picture: charts load, counts come.
constexpr int kSettleMilliseconds = 60;

// A search that ends by rounds draws the same nest each time.
constexpr std::uint64_t kSearchRounds = 300;

using SlipPicture = std::pair<SlipName, const char*>;
constexpr std::array<SlipPicture, 51> kSlips{{
    {SlipName::ReadLabel, "read-label"},
    {SlipName::MarkNotPrewashed, "mark-not-prewashed"},
    {SlipName::ChooseWayRound, "choose-way-round"},
    {SlipName::NoteLawChecked, "note-law-checked"},
    {SlipName::ReceiveBlanks, "receive-blanks"},
    {SlipName::CorrectCount, "correct-count"},
    {SlipName::AddStyle, "add-style"},
    {SlipName::ChangeStyle, "change-style"},
    {SlipName::CopyStyle, "copy-style"},
    {SlipName::ChangeBlank, "change-blank"},
    {SlipName::MarkDry, "mark-dry"},
    {SlipName::MeasureShrinkage, "measure-shrinkage"},
    {SlipName::ReceiveRoll, "receive-roll"},
    {SlipName::RollMove, "roll-move"},
    {SlipName::TestStrip, "test-strip"},
    {SlipName::RecordReading, "record-reading"},
    {SlipName::CorrectReading, "correct-reading"},
    {SlipName::ImportReadings, "import-readings"},
    {SlipName::UseUpRoll, "use-up-roll"},
    {SlipName::ChangePlace, "change-place"},
    {SlipName::AddFilm, "add-film"},
    {SlipName::FilmSheet, "film-sheet"},
    {SlipName::NextShade, "next-shade"},
    {SlipName::Recipe, "recipe"},
    {SlipName::ChangeFilm, "change-film"},
    {SlipName::Miscut, "miscut"},
    {SlipName::CheckPress, "check-press"},
    {SlipName::AddPress, "add-press"},
    {SlipName::ChangePress, "change-press"},
    {SlipName::Layers, "layers"},
    {SlipName::ConfirmWording, "confirm-wording"},
    {SlipName::TakeMoney, "take-money"},
    {SlipName::MovePromise, "move-promise"},
    {SlipName::Customer, "customer"},
    {SlipName::JoinCustomers, "join-customers"},
    {SlipName::ForgetCustomer, "forget-customer"},
    {SlipName::OrderNote, "order-note"},
    {SlipName::PartOrder, "split-or-join"},
    {SlipName::Invoice, "invoice"},
    {SlipName::CreditNote, "credit-note"},
    {SlipName::CancelOrder, "cancel-order"},
    {SlipName::CameBack, "came-back"},
    {SlipName::AnswerClaim, "answer-claim"},
    {SlipName::Waive, "waive"},
    {SlipName::Spoil, "spoil"},
    {SlipName::OrdersFile, "orders-file"},
    {SlipName::CountTill, "count-till"},
    {SlipName::AddFair, "add-fair"},
    {SlipName::ChangeFair, "change-fair"},
    {SlipName::Scanner, "scanner"},
    {SlipName::Settings, "settings"},
}};
static_assert(hasEach<SlipName>(kSlips, &SlipPicture::first));

// The first is drawn with the places.
constexpr std::pair<FigureQuestion, const char*> kQuestions[] = {{FigureQuestion::WhatIsCommon, "in-common"},
                                                                 {FigureQuestion::Holding, "holding"},
                                                                 {FigureQuestion::Months, "months"},
                                                                 {FigureQuestion::Promises, "promises"},
                                                                 {FigureQuestion::Takings, "takings"},
                                                                 {FigureQuestion::Earned, "earned"},
                                                                 {FigureQuestion::Bring, "bring"},
                                                                 {FigureQuestion::Buy, "buy"},
                                                                 {FigureQuestion::Till, "till"},
                                                                 {FigureQuestion::Film, "film"}};
static_assert(std::size(kQuestions) + 1 == enumeratorCount<FigureQuestion>());

constexpr std::pair<RoomSection, const char*> kSections[] = {
    {RoomSection::Prices, "prices"},     {RoomSection::Work, "work"},
    {RoomSection::Styles, "styles"},     {RoomSection::Films, "films"},
    {RoomSection::Presses, "presses"},   {RoomSection::Fairs, "fairs"},
    {RoomSection::Copies, "copies"},     {RoomSection::Laptops, "laptops"},
    {RoomSection::Computer, "computer"}, {RoomSection::Printers, "printers"}};

std::vector<PrintQueue> printersForPictures() {
    PrintQueue labels;
    labels.name = QStringLiteral("Labels at the stall");
    labels.page = {QStringLiteral("62x100"), {62, 100}};
    PrintQueue sheets;
    sheets.name = QStringLiteral("Workshop");
    sheets.page = {QStringLiteral("A4"), {210, 297}};
    sheets.isUsual = true;
    return {labels, sheets};
}

bool isSearching(const MainWindow& window) {
    const Workshop* workshop = window.workshop();
    const auto* bench = workshop ? qobject_cast<const CuttingBenchPlace*>(workshop->place()) : nullptr;
    return bench && bench->isSearching();
}

void settle(const MainWindow& window) {
    QElapsedTimer since;
    since.start();
    do {
        QApplication::sendPostedEvents();
        QApplication::processEvents(QEventLoop::AllEvents, 10);
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    } while (since.elapsed() < kSettleMilliseconds || isSearching(window));
}

class Tour {
public:
    Tour(const Arguments& arguments, Clock clock)
        : m_folder(arguments.target)
        , m_scale(arguments.scale)
        , m_clock(std::move(clock)) {}

    Result<std::string> draw(const fs::path& shop) {
        std::error_code error;
        fs::create_directories(m_folder, error);
        if (error)
            return plainError(said("The folder {folder} could not be made: {why}.",
                                   {{"folder", m_folder.string()}, {"why", error.message()}}));
        for (const Light each : {Light::Day, Light::Evening}) {
            m_light = each;
            if (const auto drawn = drawShop(shop); !drawn.ok())
                return drawn.error();
            if (const auto drawn = drawEmpty(); !drawn.ok())
                return drawn.error();
        }
        const auto papers = drawPaperPictures(shop, m_clock, m_folder, m_scale);
        if (!papers.ok())
            return papers.error();
        m_drawn += *papers;
        // Last, because the order stays on the table of the copy.
        for (const Light each : {Light::Day, Light::Evening}) {
            m_light = each;
            if (const auto drawn = drawHalfTypedOrder(shop); !drawn.ok())
                return drawn.error();
        }
        return "Drew " + std::to_string(m_drawn) + " pictures into " + m_folder.string() + "\n";
    }

private:
    Result<Done> drawShop(const fs::path& shop) {
        const auto window = newWindow();
        auto opened = db::Shop::open(shop, m_clock.now);
        if (!opened.ok())
            return opened.error();
        window->open(std::move(opened).value());
        setLight(*qApp, m_light);
        Workshop& workshop = *window->workshop();
        for (const BuiltPlace& place : builtPlaces()) {
            workshop.turnTo(place.name);
            if (const auto kept = keep(*window, place.code); !kept.ok())
                return kept;
        }
        if (const auto drawn = drawAtWork(*window); !drawn.ok())
            return drawn;
        if (const auto drawn = drawLearned(*window); !drawn.ok())
            return drawn;
        if (const auto drawn = drawBackRoom(*window); !drawn.ok())
            return drawn;
        if (const auto drawn = drawSlips(*window); !drawn.ok())
            return drawn;
        return drawFinder(*window);
    }

    // An order that came back, and each question of the figures after the first.
    Result<Done> drawLearned(MainWindow& window) {
        Workshop& workshop = *window.workshop();
        if (const SlipTarget claim = openClaim(*window.desk()); claim.order) {
            workshop.turnTo(PlaceName::OrderBook, claim);
            if (const auto kept = keep(window, "order-book-came-back"); !kept.ok())
                return kept;
        }
        workshop.turnTo(PlaceName::Figures);
        auto* figures = qobject_cast<FiguresPlace*>(workshop.place());
        for (const auto& [question, code] : kQuestions) {
            figures->ask(question);
            if (const auto kept = keep(window, std::string{"figures-"} + code); !kept.ok())
                return kept;
        }
        return Done{};
    }

    // The sections of the Back room after the first.
    Result<Done> drawBackRoom(MainWindow& window) {
        Workshop& workshop = *window.workshop();
        workshop.turnTo(PlaceName::BackRoom);
        auto* room = qobject_cast<BackRoomPlace*>(workshop.place());
        for (const auto& [section, code] : kSections) {
            room->turnToSection(section);
            if (const auto kept = keep(window, std::string{"back-room-"} + code); !kept.ok())
                return kept;
        }
        return Done{};
    }

    // Places as they are in the middle of work: the order on the press, a wash that frees a held garment.
    Result<Done> drawAtWork(MainWindow& window) {
        const auto& reckoned = window.desk()->shop();
        Workshop& workshop = *window.workshop();
        for (const auto& [id, assessment] : reckoned->assessments) {
            if (assessment.stage != Stage::OnPress)
                continue;
            SlipTarget matter;
            matter.order = reckoned->facts.garments.at(id).order;
            workshop.turnTo(PlaceName::OrderBook, matter);
            if (const auto kept = keep(window, "order-book-at-work"); !kept.ok())
                return kept;
            break;
        }
        SlipTarget fullest;
        std::size_t most = 0;
        for (const FilmToCut& film : filmsToCut(*reckoned)) {
            if (film.waiting.size() <= most)
                continue;
            most = film.waiting.size();
            fullest.film = film.film;
            fullest.decal = film.waiting.front();
        }
        workshop.turnTo(PlaceName::CuttingBench, fullest);
        if (const auto kept = keep(window, "cutting-bench-at-work"); !kept.ok())
            return kept;
        for (const auto& [id, assessment] : reckoned->assessments) {
            const Finding* hold = assessment.firstHold();
            if (!hold || hold->rule != Rule::BlankUnwashed)
                continue;
            workshop.turnTo(PlaceName::BlankRail, SlipTarget::of(*hold, reckoned->facts.garments.at(id)));
            if (const auto kept = keep(window, "blank-rail-at-work"); !kept.ok())
                return kept;
            break;
        }
        return Done{};
    }

    Result<Done> drawHalfTypedOrder(const fs::path& shop) {
        auto opened = db::Shop::open(shop, m_clock.now);
        if (!opened.ok())
            return opened.error();
        if (!keepHalfTypedOrder(**opened))
            return Done{};
        const auto window = newWindow();
        window->open(std::move(opened).value());
        setLight(*qApp, m_light);
        window->workshop()->turnTo(PlaceName::FairTable);
        return keep(*window, "fair-table-at-work");
    }

    Result<Done> drawSlips(MainWindow& window) {
        Workshop& workshop = *window.workshop();
        const SlipTarget matter = matterOf(*window.desk()->shop());
        for (const auto& [slip, code] : kSlips) {
            workshop.showSlip(slip, matterFor(slip, *window.desk(), matter));
            if (!workshop.slipEdge()->isOpen()) {
                // Nothing in this shop that it could be about.
                workshop.foot()->showLast(window.desk()->file());
                continue;
            }
            if (const auto kept = keep(window, std::string{"slip-"} + code); !kept.ok())
                return kept;
            workshop.slipEdge()->close();
        }
        workshop.doErrand(Errand::BackUp);
        // The shop that is drawn is in a folder of another name each time.
        if (auto* path = window.findChild<LongField*>(QStringLiteral("path")))
            path->setText(QStringLiteral("/media/stick/shop.holdfast"));
        const auto kept = keep(window, "slip-back-up");
        workshop.slipEdge()->close();
        return kept;
    }

    Result<Done> drawFinder(MainWindow& window) {
        const auto& orders = window.desk()->shop()->facts.orders;
        CommandFinder& finder = *window.workshop()->finder();
        finder.open();
        if (const auto kept = keep(window, "finder"); !kept.ok())
            return kept;
        if (!orders.empty()) {
            finder.open(QString::number(orders.begin()->number).left(2));
            if (const auto kept = keep(window, "finder-typed"); !kept.ok())
                return kept;
        }
        finder.close();
        return Done{};
    }

    // The shop before anything is in it, and the window before there is a shop.
    Result<Done> drawEmpty() {
        const auto window = newWindow();
        window->open(db::Shop::createInMemory(m_clock.now));
        setLight(*qApp, m_light);
        for (const BuiltPlace& place : builtPlaces()) {
            window->workshop()->turnTo(place.name);
            if (const auto kept = keep(*window, std::string{place.code} + "-empty"); !kept.ok())
                return kept;
        }
        const auto first = newWindow();
        first->showStart();
        setLight(*qApp, m_light);
        return keep(*first, "start");
    }

    std::unique_ptr<MainWindow> newWindow() {
        auto window = std::make_unique<MainWindow>(m_clock);
        window->setFixedSize(kSize);
        window->show();
        window->activateWindow();
        return window;
    }

    Result<Done> keep(MainWindow& window, const std::string& name) {
        settle(window);
        const std::string light = m_light == Light::Day ? "-day" : "-evening";
        const fs::path path = m_folder / (name + light + (m_scale == 2 ? "@2x" : "") + ".png");
        const QImage picture = window.grab().toImage().convertToFormat(QImage::Format_RGB32);
        if (!picture.save(QString::fromStdString(path.string()), "PNG"))
            return plainError(
                said("The picture {picture} could not be written.", {{"picture", path.string()}}));
        ++m_drawn;
        return Done{};
    }

    fs::path m_folder;
    int m_scale;
    Clock m_clock;
    Light m_light = Light::Day;
    int m_drawn = 0;
};

} // namespace

Result<std::string> tour(const Arguments& arguments, const Clock& clock) {
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    QTemporaryDir copies;
    const fs::path copy = fs::path(copies.path().toStdString()) / "tour.holdfast";
    {
        auto shop = db::Shop::openReadOnly(*path, clock.now);
        if (!shop.ok())
            return shop.error();
        if (const auto copied = db::backup(**shop, copy); !copied.ok())
            return copied.error();
    }
    // Whatever this computer's own settings and printers are, the pictures are the same.
    qputenv("XDG_CONFIG_HOME", copies.path().toLocal8Bit());
    BackRoomPlace::setPrinters(printersForPictures());
    BackupsBeside::showInstead(backupsForPictures(clock.moment()));
    CuttingBenchPlace::setSearchRounds(kSearchRounds);
    auto drawn = Tour{arguments, clock}.draw(copy);
    CuttingBenchPlace::setSearchRounds(std::nullopt);
    BackupsBeside::showInstead(std::nullopt);
    BackRoomPlace::setPrinters(std::nullopt);
    return drawn;
}

} // namespace holdfast::app
