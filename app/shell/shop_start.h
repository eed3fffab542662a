#pragma once
// What the window shows while no shop is open: start a new one, open a file, or look at the demo.

#include "core/trade/result.h"

#include <QWidget>

#include <filesystem>

namespace holdfast::app {

class Banner;
class Button;
class Field;
class Label;
class VerticalScroll;

class ShopStart : public QWidget {
    Q_OBJECT

public:
    explicit ShopStart(QWidget* parent = nullptr);

    // `why` says what went wrong before, or nothing.
    void begin(const QString& why);
    // An error at its field: name, file; else above all.
    void refuse(const Error& error);
    void showDemoUnderWay();
    void setCanGoBack(bool canGoBack); // a shop is still open behind

signals:
    void newAsked(const std::filesystem::path& path, const QString& name);
    void fileAsked(const std::filesystem::path& path);
    void demoAsked();
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
    Field* m_name = nullptr;
    Label* m_keptIn = nullptr;
    Field* m_file = nullptr;
    Button* m_demo = nullptr;
    Button* m_back = nullptr;
};

} // namespace holdfast::app
