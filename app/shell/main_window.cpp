// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/main_window.h"

#include "app/desk/background_work.h"
#include "app/desk/formats.h"
#include "app/desk/local_currency.h"
#include "app/desk/machine_settings.h"
#include "app/shell/foot_line.h"
#include "app/shell/seat.h"
#include "app/shell/shop_paths.h"
#include "app/shell/shop_start.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "db/backups/putting_back.h"

#include <QApplication>

namespace holdfast::app {

namespace {

// Below this a place is seen through too small a hole; above it, what does not fit scrolls.
constexpr QSize kLeastSize{480, 320};
constexpr QSize kUsualSize{1366, 768};
constexpr int kSettled = 1'000;

} // namespace

MainWindow::MainWindow(Clock clock, QWidget* parent)
    : QWidget(parent)
    , m_clock(std::move(clock)) {
    setObjectName(QStringLiteral("mainWindow"));
    setWindowTitle(tr("Holdfast"));
    setMinimumSize(kLeastSize);
    resize(kUsualSize);
    m_settled.setSingleShot(true);
    m_settled.setInterval(kSettled);
    connect(&m_settled, &QTimer::timeout, this, [this] { keepWhereItIs(*this); });
}

MainWindow::~MainWindow() {
    closeShop();
}

void MainWindow::closeShop() {
    // Places hold the desk: they go first.
    delete m_workshop;
    m_workshop = nullptr;
    m_desk.reset();
}

void MainWindow::open(std::unique_ptr<db::Shop> file, Clock clock) {
    closeShop();
    if (m_start != nullptr)
        m_start->deleteLater();
    m_start = nullptr;
    const Light kept = keptLight(*file);
    if (kept != light())
        setLight(*qApp, kept);
    handOnChoices(*file);
    m_desk = std::make_unique<ShopDesk>(std::move(file), std::move(clock));
    m_workshop = new Workshop(*m_desk, this);
    connect(m_workshop, &Workshop::anotherShopAsked, this, [this] { showStart(); }, Qt::QueuedConnection);
    // Queued: the shop is closed for it, and with it whoever asks.
    connect(
        m_workshop, &Workshop::puttingBackReady, this,
        [this](const std::shared_ptr<db::PreparedBackup>& backup) { putBack(*backup); },
        Qt::QueuedConnection);
    connect(m_workshop, &Workshop::textSizeAsked, this, &MainWindow::setTextSize, Qt::QueuedConnection);
    m_workshop->slipEdge()->setLeft(takeForms(m_desk->file()));
    m_workshop->setGeometry(rect());
    m_workshop->show();
    m_workshop->begin();
    emit shopOpened(m_desk->file().path());
}

// The shop is closed for moments; whatever comes of it, the file of that name is opened again.
void MainWindow::putBack(db::PreparedBackup& backup) {
    const Clock clock = m_desk->clock();
    const LocalTime now = m_desk->now().local();
    closeShop();
    const auto kept = backup.putInPlace(now);
    auto opened = db::Shop::open(backup.shop(), clock.now);
    if (!opened.ok())
        return showStart(words((kept.ok() ? opened.error() : kept.error()).message), backup.shop());
    open(std::move(opened).value(), clock);
    // After the frame has said what was done last.
    QTimer::singleShot(0, m_workshop, [foot = m_workshop->foot(), kept, now] {
        if (kept.ok())
            foot->showWords(tr("The backup is put back. What was here before is kept as a backup of %1.")
                                .arg(app::clock(now)));
        else
            foot->showFailure(words(kept.error().message));
    });
}

void MainWindow::showStart(const QString& why, const std::filesystem::path& shop) {
    if (m_start == nullptr) {
        m_start = new ShopStart(m_clock, this);
        connect(m_start, &ShopStart::newAsked, this, &MainWindow::startNew);
        connect(m_start, &ShopStart::fileAsked, this, &MainWindow::openFile);
        connect(m_start, &ShopStart::putBack, this, &MainWindow::openFile);
        connect(m_start, &ShopStart::demoAsked, this, &MainWindow::openDemo);
        connect(m_start, &ShopStart::backAsked, this, [this] {
            m_start->deleteLater();
            m_start = nullptr;
            m_workshop->show();
            m_workshop->turnTo(m_workshop->current());
        });
    }
    if (m_workshop != nullptr)
        m_workshop->hide();
    m_start->setCanGoBack(m_workshop != nullptr);
    m_start->setGeometry(rect());
    m_start->show();
    m_start->begin(why);
    m_start->offerBackupsOf(shop.empty() ? defaultShopPath() : shop);
}

void MainWindow::startNew(const std::filesystem::path& path, const QString& name, const QString& currency) {
    auto made = startShop(path, plain(name), currencyOfCode(currency), m_clock.now);
    if (!made.ok()) {
        m_start->refuse(made.error());
        return;
    }
    open(std::move(made).value());
}

void MainWindow::openFile(const std::filesystem::path& path) {
    if (m_desk != nullptr && m_desk->file().path() == path) {
        // It is open already: opening it a second time would be refused by its own lock.
        emit m_start->backAsked();
        return;
    }
    auto opened = db::Shop::open(path, m_clock.now);
    if (!opened.ok()) {
        m_start->refuse({opened.error().message, "file"});
        m_start->offerBackupsOf(path);
        return;
    }
    open(std::move(opened).value());
}

void MainWindow::openDemo() {
    if (m_demoMaking == nullptr) {
        m_demoMaking = new BackgroundWork(this);
        connect(m_demoMaking, &BackgroundWork::failed, this, [this](const QString& reason) {
            if (m_start != nullptr)
                m_start->refuse({inWindow(reason), "demo"});
        });
        connect(m_demoMaking, &BackgroundWork::succeeded, this, [this] {
            const LocalDate day = m_clock.moment().today();
            const Clock clock = clockOn(day, kDemoTime);
            auto opened = openDemoToWorkIn(day, clock.now);
            if (opened.ok())
                open(std::move(opened).value(), clock);
            else if (m_start != nullptr)
                m_start->refuse({opened.error().message, "demo"});
        });
    }
    const LocalDate day = m_clock.moment().today();
    if (m_demoMaking->begin(tr("Making the demo"),
                            [day](const BackgroundWork::Progress&) -> Result<std::string> {
                                const auto made = demoShop(day);
                                if (!made.ok())
                                    return made.error();
                                return std::string{};
                            }))
        m_start->showDemoUnderWay();
}

void MainWindow::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (m_workshop != nullptr)
        m_workshop->setGeometry(rect());
    if (m_start != nullptr)
        m_start->setGeometry(rect());
    if (isVisible())
        m_settled.start();
}

void MainWindow::moveEvent(QMoveEvent* event) {
    QWidget::moveEvent(event);
    if (isVisible())
        m_settled.start();
}

void MainWindow::closeEvent(QCloseEvent* event) {
    keepWhereItIs(*this);
    QWidget::closeEvent(event);
}

void MainWindow::setTextSize(int percent) {
    keepTextSize(percent);
    handOnForms(m_desk->file(), m_workshop->slipEdge()->left());
    m_isToReopen = true;
    close();
}

} // namespace holdfast::app
