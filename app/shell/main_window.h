// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The window. Either a shop is open in it (Workshop), or it asks which one to open (ShopStart).

#include "app/desk/shop_desk.h"

#include <QTimer>
#include <QWidget>

#include <filesystem>
#include <memory>

namespace holdfast::db {
class PreparedBackup;
}

namespace holdfast::app {

class BackgroundWork;
class ShopStart;
class Workshop;

class MainWindow : public QWidget {
    Q_OBJECT

public:
    explicit MainWindow(Clock clock, QWidget* parent = nullptr);
    ~MainWindow() override;

    // Puts this shop in the place of what was open.
    void open(std::unique_ptr<db::Shop> file, Clock clock);
    void open(std::unique_ptr<db::Shop> file) { open(std::move(file), m_clock); }
    // Asks which shop to open; `why` says what went wrong before, if anything did, and with which shop.
    void showStart(const QString& why = {}, const std::filesystem::path& shop = {});

    ShopDesk* desk() const { return m_desk.get(); }
    Workshop* workshop() const { return m_workshop; }
    ShopStart* start() const { return m_start; }
    // The window was closed to be opened again with text of another size.
    bool isToReopen() const { return m_isToReopen; }

signals:
    // Its file; empty where it has none.
    void shopOpened(const std::filesystem::path& file);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void moveEvent(QMoveEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

private:
    void startNew(const std::filesystem::path& path, const QString& name, const QString& currency);
    void openFile(const std::filesystem::path& path);
    void openDemo();
    void closeShop();
    void setTextSize(int percent);
    void putBack(db::PreparedBackup& backup);

    Clock m_clock;
    std::unique_ptr<ShopDesk> m_desk;
    Workshop* m_workshop = nullptr;
    ShopStart* m_start = nullptr;
    BackgroundWork* m_demoMaking = nullptr;
    QTimer m_settled; // some time after the window was moved or its size changed
    bool m_isToReopen = false;
};

} // namespace holdfast::app
