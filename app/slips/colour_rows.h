// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The colours of a style, a row for each with its name and its shade; below them the shade card of the row
// that the keyboard is in. A row that was added must be named, or taken out again; a colour that the style
// has already can be retired, too.

#include "app/slips/typed_values.h"
#include "core/facts/blank_style.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace holdfast::app {

class Button;
class Field;
class Label;
class ShadePicker;

class ColourRows : public QWidget, public KeepsTyped {
    Q_OBJECT

public:
    // Those that the style has, or an empty row to begin with.
    explicit ColourRows(const std::vector<Colour>& colours = {}, QWidget* parent = nullptr);

    std::vector<Colour> colours() const; // those with a name
    bool isFilled() const;               // there is one, and none is without a name
    // What is wrong with the names, empty if nothing. The keyboard goes to the row that is meant next.
    QString wrong() const;

    QVariant typed() const override;
    void putBack(const QVariant& typed) override;

signals:
    void changed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Row {
        QWidget* whole = nullptr;
        QWidget* swatch = nullptr;
        Field* name = nullptr;
        Button* retire = nullptr; // of a colour that the style has already
        Button* remove = nullptr;
        Colour colour; // its name is what the field holds
    };
    Row& addRow(const Colour& colour);
    Row& addNewRow();
    void showRetired(const Row& row);
    void removeRow(const QWidget* whole);
    void turnTo(std::size_t row);
    void setShade(Row& row, std::uint32_t rgb);
    void nameRows();
    void showShade();
    std::size_t firstUnnamed() const; // the last row where each has a name

    std::vector<Row> m_rows;
    std::size_t m_current = 0;
    QVBoxLayout* m_column = nullptr;
    Button* m_add = nullptr;
    Label* m_shadeOf = nullptr;
    ShadePicker* m_picker = nullptr;
};

} // namespace holdfast::app
