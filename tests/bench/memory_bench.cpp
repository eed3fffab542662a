// SPDX-License-Identifier: GPL-3.0-or-later
// How much memory the program holds with every place opened once: with a shop of 20,000 orders, and with an
// empty one, as a ratio. Each is a program of its own; without words this one calls itself. The time that the
// order book takes to open and to answer each key is measured on the way.
//
//     memory_bench                     both, and their ratio
//     memory_bench FOLDER large|empty  one of them

#include "app/desk/window_language.h"
#include "app/places/order_book/order_book_place.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/workshop.h"
#include "app/theme/tokens.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "tests/bench/large_shop.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QProcess>
#include <QTemporaryDir>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <string>
#include <vector>

namespace {

using namespace holdfast;
using namespace holdfast::app;
using Watch = std::chrono::steady_clock;

double since(Watch::time_point begun) {
    return std::chrono::duration<double, std::milli>(Watch::now() - begun).count();
}

// Resident memory of this program in MB.
double residentMegabytes() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("VmRSS:"))
            return std::stod(line.substr(6)) / 1024.0;
    return 0;
}

void settle() {
    for (int round = 0; round < 5; ++round)
        QApplication::processEvents(QEventLoop::AllEvents, 20);
}

void key(QWidget* widget, int code, const QString& text) {
    QKeyEvent press(QEvent::KeyPress, code, Qt::NoModifier, text);
    QApplication::sendEvent(widget, &press);
    QApplication::processEvents();
}

// The words of a search typed key by key over all orders: the 95th of 100 keystrokes, painted.
double slowKeystroke(Workshop& workshop) {
    workshop.turnTo(PlaceName::OrderBook);
    settle();
    auto* place = workshop.place();
    auto* filter = place->findChild<Choice*>(QStringLiteral("orderFilter"));
    filter->setChosen(3);
    emit filter->chosen(3);
    QLineEdit* editor = place->findChild<Field*>(QStringLiteral("orderSearch"))->editor();
    std::vector<double> times;
    for (const char* search :
         {"tern", "moss", "1984", "tee heron", "a", "s", "chalk", "odile", "07", "bib"}) {
        for (const char letter : std::string(search)) {
            const auto begun = Watch::now();
            key(editor, 0, QString(QLatin1Char(letter)));
            times.push_back(since(begun));
        }
        editor->selectAll();
    }
    std::ranges::sort(times);
    return times[times.size() * 95 / 100];
}

int holdShop(const std::string& folder, bool isLarge, int argc, char** argv) {
    QApplication application(argc, argv);
    setWindowLanguage();
    setLight(application, Light::Day);
    const Clock clock{[] { return bench::largeShopNow().instant; },
                      [] { return std::chrono::milliseconds{0}; },
                      [](Instant) { return std::chrono::seconds{0}; }};
    const std::string path = folder + (isLarge ? "/large.holdfast" : "/empty.holdfast");
    auto opened = isLarge ? db::Shop::open(path, clock.now) : db::Shop::create(path, clock.now);
    if (!opened.ok()) {
        std::fprintf(stderr, "%s\n", opened.error().message.english().c_str());
        return 1;
    }
    MainWindow window(clock);
    window.open(std::move(opened).value());
    window.resize(1366, 768);
    window.show();
    double openingBook = 0, openingWalk = 0;
    for (const BuiltPlace& place : builtPlaces()) {
        const auto begun = Watch::now();
        window.workshop()->turnTo(place.name);
        QApplication::processEvents();
        if (place.name == PlaceName::OrderBook)
            openingBook = since(begun);
        if (place.name == PlaceName::PressWalk)
            openingWalk = since(begun);
        settle();
    }
    const double memory = residentMegabytes();
    const double keystroke = isLarge ? slowKeystroke(*window.workshop()) : 0;
    std::printf("%.1f %.1f %.1f %.1f\n", memory, openingBook, openingWalk, keystroke);
    return 0;
}

std::vector<double> figuresOf(const QString& folder, const char* which) {
    QProcess one;
    one.start(QCoreApplication::applicationFilePath(), {folder, QString::fromLatin1(which)});
    one.waitForFinished(300'000);
    std::vector<double> figures;
    for (const QByteArray& each : one.readAllStandardOutput().trimmed().split(' '))
        figures.push_back(each.toDouble());
    figures.resize(4);
    return figures;
}

int measure(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    QTemporaryDir folder;
    bench::makeLargeShop((folder.path() + QStringLiteral("/large.holdfast")).toStdString());
    const auto empty = figuresOf(folder.path(), "empty");
    const auto large = figuresOf(folder.path(), "large");
    std::printf("every place open: %.0f MB with an empty shop, %.0f MB with 20,000 orders, ratio %.2f\n",
                empty[0], large[0], large[0] / empty[0]);
    std::printf(
        "with 20,000 orders: order book opens and paints in %.0f ms, press walk of 120 garments in %.0f ms, "
        "95 of 100 keystrokes of a search are painted within %.0f ms\n",
        large[1], large[2], large[3]);
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    return argc > 2 ? holdShop(argv[1], std::string(argv[2]) == "large", argc, argv) : measure(argc, argv);
}
