// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the window shows while no shop is open: start a new one, open a file, or look at the demo.

#include "app/desk/clock.h"
#include "core/trade/result.h"

#include <QWidget>

#include <filesystem>

namespace holdfast::app {

class Banner;
class Button;
class Field;
class Label;
class StartBackups;
class VerticalScroll;

class ShopStart : public QWidget {
    Q_OBJECT

public:
    explicit ShopStart(Clock clock, QWidget* parent = nullptr);

    // `why` says what went wrong before, or nothing.
    void begin(const QString& why);
    // An error at its field: name, currency, file; else above all.
    void refuse(const Error& error);
    // Its backups, where it cannot be read and has some.
    void offerBackupsOf(const std::filesystem::path& shop);
    void showDemoUnderWay();
    void setCanGoBack(bool canGoBack); // a shop is still open underneath

signals:
    void newAsked(const std::filesystem::path& path, const QString& name, const QString& currency);
    void fileAsked(const std::filesystem::path& path);
    void demoAsked();
    void putBack(const std::filesystem::path& shop); // a backup took the place of its file
    void backAsked();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* newShop();
    QWidget* openShop();
    QWidget* demo();
    void startNew();
    void openFile();
    void chooseFile();
    void clearErrors();
    void sayAt(Field& field, const QString& refusal);

    VerticalScroll* m_scroll = nullptr;
    QWidget* m_mark = nullptr;
    Banner* m_trouble = nullptr;
    StartBackups* m_backups = nullptr;
    Field* m_name = nullptr;
    Field* m_currency = nullptr;
    Label* m_keptIn = nullptr;
    Field* m_file = nullptr;
    Button* m_demo = nullptr;
    Button* m_back = nullptr;
};

} // namespace holdfast::app
