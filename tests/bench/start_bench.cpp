// How long from main to the first painted place, with the demo's shop: printed in milliseconds and as a ratio
// to an empty window with the same fonts, measured in the same run. Each measure is a program of its own,
// since a start happens once: without words this one calls itself.
//
//     start_bench                 both, a number of times, with their medians
//     start_bench empty|shop      one start
//
// The shop is a copy of the demo's, opened as one's own is: making that copy is the demo's own affair and is
// done before the time runs.

#include "app/shell/main_window.h"
#include "app/shell/shop_paths.h"
#include "app/shell/workshop.h"
#include "app/theme/tokens.h"

#include <QApplication>
#include <QMainWindow>
#include <QProcess>

#include <algorithm>
#include <chrono>
#include <cstdio>
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
    setLight(application, Light::Day);
    QMainWindow window;
    window.resize(1366, 768);
    FirstPaint painted;
    window.installEventFilter(&painted);
    window.show();
    return QApplication::exec();
}

int startShop(int argc, char** argv) {
    QApplication application(argc, argv);
    setLight(application, Light::Day);
    const Clock clock = clockOn(theDay(), kDemoTime);
    MainWindow window(clock);
    auto opened = db::Shop::open(argv[2], clock.now);
    if (!opened.ok()) {
        std::fprintf(stderr, "%s\n", opened.error().message.c_str());
        return 1;
    }
    window.open(std::move(opened).value());
    FirstPaint painted;
    window.workshop()->place()->installEventFilter(&painted);
    window.show();
    return QApplication::exec();
}

double medianOf(const char* which, const QString& shop = {}) {
    std::vector<double> times;
    for (int start = 0; start <= kStarts; ++start) {
        QProcess one;
        one.start(QCoreApplication::applicationFilePath(), {QString::fromLatin1(which), shop});
        one.waitForFinished(60'000);
        if (start > 0) // the first one makes the demo and warms the files
            times.push_back(one.readAllStandardOutput().trimmed().toDouble());
    }
    std::ranges::sort(times);
    return times[times.size() / 2];
}

int measure(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const double empty = medianOf("empty");
    const Clock clock = clockOn(theDay(), kDemoTime);
    std::string copy;
    {
        const auto opened = openDemoToWorkIn(theDay(), clock.now);
        if (!opened.ok()) {
            std::fprintf(stderr, "%s\n", opened.error().message.c_str());
            return 1;
        }
        copy = (*opened)->path().string();
    }
    const double shop = medianOf("shop", QString::fromStdString(copy));
    std::printf("empty window %.1f ms, first painted place of the demo %.1f ms, ratio %.2f (medians of %d)\n",
                empty, shop, shop / empty, kStarts);
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    g_begun = std::chrono::steady_clock::now();
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    const std::string which = argc > 1 ? argv[1] : "";
    return which == "empty"  ? startEmpty(argc, argv)
           : which == "shop" ? startShop(argc, argv)
                             : measure(argc, argv);
}
