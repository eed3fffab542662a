#pragma once
// The colours of a blank style as rows of shade and name; the card of shades below serves the row that has
// the keyboard.

#include "core/blanks/blank_style.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace holdfast::app {

class Button;
class Field;
class Label;
class ShadePicker;

class ColourRows : public QWidget {
    Q_OBJECT

public:
    explicit ColourRows(QWidget* parent = nullptr);

    // Rows without a name are left out.
    std::vector<Colour> colours() const;
    bool isFilled() const { return !colours().empty(); }

signals:
    void changed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Row {
        QWidget* swatch;
        Field* name;
        std::uint32_t rgb;
    };

    void addRow();
    void turnTo(std::size_t row);
    void showShade();

    std::vector<Row> m_rows;
    std::size_t m_current = 0;
    QVBoxLayout* m_column = nullptr;
    Button* m_add = nullptr;
    Label* m_shadeOf = nullptr;
    ShadePicker* m_picker = nullptr;
};

} // namespace holdfast::app
