// SPDX-License-Identifier: GPL-3.0-or-later
// How long from main to the first painted place, with the demo's shop: printed in milliseconds and as a ratio
// to an empty window with the same fonts, measured in the same run. Each measure is a program of its own,
// since a start happens once: without words this one calls itself.
//
//     start_bench                 all of it: an empty window and the demo's shop, a number of times, with
//     their
//                                 medians; then the demo's shop with longer and longer climate logs
//     start_bench empty           one start
//     start_bench shop FILE
//     start_bench log FILE        one start; goes on until the log is read and says how long that took and
//     for
//                                 how long at the most the interface thread heard nothing
//
// The shop is a copy of the demo's, opened as one's own is: making that copy is the demo's own affair and is
// done before the time runs.

#include "app/desk/window_language.h"
#include "app/shell/main_window.h"
#include "app/shell/seat.h"
#include "app/shell/shop_paths.h"
#include "app/shell/workshop.h"
#include "app/theme/tokens.h"
#include "db/actions/film_actions.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMainWindow>
#include <QProcess>
#include <QTemporaryDir>
#include <QTimer>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <future>
#include <optional>
#include <string>
#include <vector>

namespace {

using namespace holdfast;
using namespace holdfast::app;

constexpr int kStarts = 15;

std::chrono::steady_clock::time_point g_begun;

double sinceMain() {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - g_begun).count();
}

LocalDate theDay() {
    return localDate(2026, 11, 11);
}

// Ends the program once the widget has been painted.
class FirstPaint : public QObject {
public:
    using QObject::QObject;
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() != QEvent::Paint)
            return QObject::eventFilter(watched, event);
        watched->removeEventFilter(this);
        watched->event(event);
        QMetaObject::invokeMethod(
            qApp,
            [] {
                std::printf("%.2f\n", sinceMain());
                QApplication::quit();
            },
            Qt::QueuedConnection);
        return true;
    }
};

int startEmpty(int argc, char** argv) {
    QApplication application(argc, argv);
    setWindowLanguage();
    setLight(application, Light::Day);
    QMainWindow window;
    window.resize(1366, 768);
    FirstPaint painted;
    window.installEventFilter(&painted);
    window.show();
    return QApplication::exec();
}

// Ends the program once the climate log is read and the window has drawn what it tells.
class Silence : public QObject {
public:
    explicit Silence(ShopDesk& desk)
        : m_desk(desk) {
        m_since.start();
        QObject::connect(&m_breath, &QTimer::timeout, this, &Silence::breathe);
        m_breath.start(1);
    }

private:
    void breathe() {
        m_longest = std::max(m_longest, m_since.nsecsElapsed());
        m_since.start();
        if (m_desk.awaitsClimate())
            return;
        if (!m_readAfter)
            m_readAfter = sinceMain();
        else if (sinceMain() > *m_readAfter + kSettles) {
            std::printf("%.2f %.2f\n", *m_readAfter, static_cast<double>(m_longest) / 1e6);
            QApplication::quit();
        }
    }

    static constexpr double kSettles = 300;

    ShopDesk& m_desk;
    QTimer m_breath;
    QElapsedTimer m_since;
    qint64 m_longest = 0;
    std::optional<double> m_readAfter;
};

int startShop(int argc, char** argv, bool goesOn) {
    QApplication application(argc, argv);
    setWindowLanguage();
    const Clock clock = clockOn(theDay(), kDemoTime);
    auto opening = std::async(std::launch::async, [&] { return db::Shop::open(argv[2], clock.now); });
    setLight(application, Light::Day);
    MainWindow window(clock);
    auto opened = opening.get();
    if (!opened.ok()) {
        std::fprintf(stderr, "%s\n", opened.error().message.english().c_str());
        return 1;
    }
    window.open(std::move(opened).value());
    FirstPaint painted;
    std::optional<Silence> silence;
    if (goesOn)
        silence.emplace(*window.desk());
    else
        window.workshop()->place()->installEventFilter(&painted);
    window.show();
    return QApplication::exec();
}

// The median of each figure that a start prints.
std::vector<double> mediansOf(const char* which, const QString& shop = {}) {
    std::vector<std::vector<double>> times;
    for (int start = 0; start <= kStarts; ++start) {
        QProcess one;
        one.start(QCoreApplication::applicationFilePath(), {QString::fromLatin1(which), shop});
        one.waitForFinished(60'000);
        const QList<QByteArray> figures = one.readAllStandardOutput().trimmed().split(' ');
        times.resize(static_cast<std::size_t>(figures.size()));
        for (qsizetype at = 0; at < figures.size() && start > 0; ++at) // the first one warms the files
            times[static_cast<std::size_t>(at)].push_back(figures[at].toDouble());
    }
    std::vector<double> medians;
    for (std::vector<double>& each : times) {
        std::ranges::sort(each);
        medians.push_back(each[each.size() / 2]);
    }
    return medians;
}

// A copy of the demo's shop with so many more readings of its first place, one every two minutes, before
// those it has.
Result<Done> makeShopWithLog(const std::filesystem::path& from, const std::filesystem::path& path,
                             std::int64_t count, PlaceName openedLast) {
    std::filesystem::copy_file(from, path);
    const auto opened = db::Shop::open(path, clockOn(theDay(), kDemoTime).now);
    if (!opened.ok())
        return opened.error();
    db::Shop& shop = **opened;
    const PlaceId place{shop.connection().number("SELECT MIN(place_id) FROM climate_reading")};
    const Instant first{std::chrono::seconds{
        shop.connection().number("SELECT MIN(at) FROM climate_reading WHERE place_id = ?1", place)}};
    ClimateSeries readings;
    for (std::int64_t back = count; back > 0; --back)
        readings.push_back({first - std::chrono::minutes{2} * back,
                            Celsius{19 + 0.001 * static_cast<double>(back % 3'000)},
                            Humidity{40 + 0.01 * static_cast<double>(back % 1'000)}});
    if (!readings.empty()) {
        const auto added = db::importReadings(shop, place, readings, {});
        if (!added.ok())
            return added.error();
    }
    keepPlace(shop, *builtPlace(openedLast));
    return Done{};
}

void measureLogs(const std::filesystem::path& demo) {
    const QTemporaryDir folder;
    for (const PlaceName place : {PlaceName::FairTable, PlaceName::PressWalk}) {
        for (const std::int64_t readings : {0, 10'000, 1'000'000}) {
            const std::filesystem::path path =
                std::filesystem::path{folder.path().toStdString()} /
                (std::string{builtPlace(place)->code} + "-" + std::to_string(readings));
            const auto made = makeShopWithLog(demo, path, readings, place);
            if (!made.ok()) {
                std::fprintf(stderr, "%s\n", made.error().message.english().c_str());
                return;
            }
            const QString shop = QString::fromStdString(path.string());
            const double painted = mediansOf("shop", shop).front();
            const std::vector<double> log = mediansOf("log", shop);
            std::printf(
                "%s, %lld more readings: first painted after %.1f ms, all read after %.1f ms, silent for "
                "%.1f ms at the most\n",
                builtPlace(place)->code, static_cast<long long>(readings), painted, log.front(), log.back());
        }
    }
}

int measure(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const double empty = mediansOf("empty").front();
    const Clock clock = clockOn(theDay(), kDemoTime);
    std::string copy;
    {
        const auto opened = openDemoToWorkIn(theDay(), clock.now);
        if (!opened.ok()) {
            std::fprintf(stderr, "%s\n", opened.error().message.english().c_str());
            return 1;
        }
        copy = (*opened)->path().string();
    }
    const double shop = mediansOf("shop", QString::fromStdString(copy)).front();
    std::printf("empty window %.1f ms, first painted place of the demo %.1f ms, ratio %.2f (medians of %d)\n",
                empty, shop, shop / empty, kStarts);
    measureLogs(copy);
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    g_begun = std::chrono::steady_clock::now();
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    const std::string which = argc > 1 ? argv[1] : "";
    return which == "empty"  ? startEmpty(argc, argv)
           : which == "shop" ? startShop(argc, argv, false)
           : which == "log"  ? startShop(argc, argv, true)
                             : measure(argc, argv);
}
