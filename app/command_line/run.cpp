// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/run.h"

#include "app/command_line/arguments.h"
#include "app/command_line/going_on.h"
#include "app/command_line/papers.h"
#include "app/command_line/table_files.h"
#include "app/command_line/tour.h"
#include "app/command_line/verbs.h"
#include "app/desk/formats.h"
#include "app/desk/machine_settings.h"
#include "app/desk/window_language.h"
#include "app/shell/desktop_notice.h"
#include "app/shell/main_window.h"
#include "app/shell/shop_paths.h"
#include "app/shell/to_front.h"
#include "app/shell/window_call.h"
#include "app/theme/tokens.h"

#include <QApplication>
#include <QCoreApplication>
#include <QIcon>
#include <QTimer>

#include <sqlite3.h>
#include <sys/stat.h>

#include <chrono>
#include <cstdio>
#include <functional>
#include <future>
#include <optional>
#include <utility>
#include <vector>

namespace holdfast::app {

namespace {

constexpr int kDone = 0;
constexpr int kNotDone = 1;
constexpr int kWrongUsage = 2;

constexpr std::chrono::milliseconds kPainted{200}; // after its shop was opened in it, a window is seen

int tell(const Result<std::string>& outcome) {
    if (!outcome.ok()) {
        std::fprintf(stderr, "holdfast: %s\n", outcome.error().message.english().c_str());
        return kNotDone;
    }
    std::fwrite(outcome->data(), 1, outcome->size(), stdout);
    return std::fflush(stdout) == 0 ? kDone : kNotDone;
}

std::string versionAndLicence() {
    return "holdfast " HOLDFAST_VERSION "\n"
           "With Qt " +
           std::string(qVersion()) + " and SQLite " + sqlite3_libversion() +
           ".\n"
           "Free software under the GNU General Public License, version 3 or later. There is no warranty.\n";
}

void nameProgram() {
    QCoreApplication::setApplicationName(QStringLiteral("holdfast"));
    QCoreApplication::setApplicationVersion(QStringLiteral(HOLDFAST_VERSION));
}

int doVerb(const Arguments& arguments, int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    nameProgram();
    setWindowLanguage();
    const Clock clock = clockFor(arguments);
    switch (arguments.verb) {
    case Verb::Report:
        return tell(report(arguments, standingClock(clock)));
    case Verb::Check:
        return tell(check(arguments, clock));
    case Verb::Mend:
        return tell(mend(arguments, clock));
    case Verb::Save:
        return tell(saveWhatCanBe(arguments, clock));
    case Verb::Backup:
        return tell(backUp(arguments, clock));
    case Verb::Backups:
        return tell(listBackups(arguments, clock));
    case Verb::PutBack:
        return tell(putBack(arguments, clock));
    case Verb::Export:
        return tell(exportTables(arguments, clock));
    case Verb::Import:
        return tell(importTable(arguments, clock));
    case Verb::DueDays:
        return tell(saveDueDays(arguments, clock));
    case Verb::Forget:
        return tell(forget(arguments, clock));
    default:
        return kWrongUsage;
    }
}

// Letters are measured and drawn, which needs fonts but no display. What Qt misses where nobody is logged in,
// as by a timer, is nothing to report.
int doLettering(const Arguments& arguments, int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_LOGGING_RULES", "default.warning=false");
    const QGuiApplication application(argc, argv);
    nameProgram();
    setWindowLanguage();
    return arguments.verb == Verb::TakeOrders ? tell(takeOrders(arguments, clockFor(arguments)))
                                              : tell(papers(arguments, standingClock(clockFor(arguments))));
}

// Pictures are the same on every machine: drawn without a display, at the scale asked for.
int doTour(const Arguments& arguments, int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_SCALE_FACTOR", arguments.scale == 2 ? "2" : "1");
    QApplication application(argc, argv);
    nameProgram();
    setWindowLanguage();
    setLight(application, Light::Day);
    return tell(tour(arguments, standingClock(clockFor(arguments))));
}

// For desktops that do not take it from the installed desktop file.
QIcon programIcon() {
    QIcon icon;
    icon.addFile(QStringLiteral(":/program/holdfast-32.png"));
    icon.addFile(QStringLiteral(":/program/holdfast-64.png"));
    return icon;
}

using OpenedShop = Result<std::unique_ptr<db::Shop>>;

// Empty: there is no shop yet.
std::function<OpenedShop()> wayToOpen(const Arguments& arguments, const std::optional<GoingOn>& on,
                                      const Clock& clock) {
    if (on)
        return [path = on->shop, clock] { return db::Shop::open(path, clock.now); };
    const std::filesystem::path path = arguments.shop.value_or(defaultShopPath());
    std::error_code ignored;
    if (arguments.isDemo)
        return [clock] { return openDemoToWorkIn(clock.moment().today(), clock.now); };
    if (!arguments.shop && !std::filesystem::exists(path, ignored))
        return {};
    return [path, clock] { return db::Shop::open(path, clock.now); };
}

void openIn(MainWindow& window, std::optional<OpenedShop> opened, const std::filesystem::path& shop) {
    if (!opened)
        window.showStart();
    else if (opened->ok())
        window.open(std::move(*opened).value());
    else
        window.showStart(words(opened->error().message), shop);
}

// The file that a window opened with these words works in.
std::filesystem::path shopOf(const Arguments& arguments) {
    return arguments.isDemo ? demoToWorkIn() : arguments.shop.value_or(defaultShopPath());
}

// It answers when Holdfast is started again with its shop. The bus is asked for once the window has been
// painted, which does not wait for it.
void answerCalls(MainWindow& window) {
    auto* call = new WindowCall(sessionBus, &window);
    QObject::connect(call, &WindowCall::called, &window,
                     [&window](const QString& token) { bringToFront(window, token); });
    QObject::connect(&window, &MainWindow::shopOpened, call, [call](const std::filesystem::path& file) {
        QTimer::singleShot(kPainted, call, [call, file] { call->answerFor(file); });
    });
}

// What is to be gone on with in a new process, once the window is closed.
std::optional<GoingOn> workInWindow(const Arguments& arguments, int argc, char** argv, int& status) {
    const QString token = activationToken();
    QApplication application(argc, argv);
    setWindowLanguage();
    QGuiApplication::setDesktopFileName(QStringLiteral("holdfast"));
    QGuiApplication::setWindowIcon(programIcon());
    const auto on = handedOn();
    const Clock clock = on ? on->clock() : clockFor(arguments);
    // The file is looked over and opened while the fonts are read.
    const auto open = wayToOpen(arguments, on, clock);
    std::future<OpenedShop> opening = open ? std::async(std::launch::async, open) : std::future<OpenedShop>();
    setLight(application, Light::Day);
    std::optional<OpenedShop> opened;
    if (opening.valid())
        opened = opening.get();
    if (opened && !opened->ok() && callWindowOf(shopOf(arguments), sessionBus(), token))
        return std::nullopt;
    MainWindow window(clock);
    answerCalls(window);
    openIn(window, std::move(opened), on ? on->shop : arguments.shop.value_or(std::filesystem::path{}));
    showWhereItWas(window);
    status = QApplication::exec();
    if (!window.isToReopen())
        return std::nullopt;
    return GoingOn{window.desk()->file().path(), window.desk()->clock().now()};
}

int openWindow(const Arguments& arguments, int argc, char** argv) {
    nameProgram();
    int status = kDone;
    applyTextSize();
    if (const auto on = workInWindow(arguments, argc, argv, status)) {
        forgetTextSize();
        goOn(*on, argv);
        return kNotDone;
    }
    return status;
}

} // namespace

int run(int argc, char** argv) {
    ::umask(S_IRWXG | S_IRWXO); // what is written here bears names and telephone numbers
    const std::vector<std::string> words(argv + std::min(argc, 1), argv + argc);
    const auto arguments = readArguments(words);
    if (!arguments.ok()) {
        std::fprintf(stderr, "holdfast: %s\n", arguments.error().message.english().c_str());
        return kWrongUsage;
    }
    switch (arguments->verb) {
    case Verb::Help:
        return tell(usage());
    case Verb::Version:
        return tell(versionAndLicence());
    case Verb::Window:
        return openWindow(*arguments, argc, argv);
    case Verb::Tour:
        return doTour(*arguments, argc, argv);
    case Verb::Papers:
    case Verb::TakeOrders:
        return doLettering(*arguments, argc, argv);
    default:
        return doVerb(*arguments, argc, argv);
    }
}

} // namespace holdfast::app
