// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How many came of each size and colour: a block for each colour with a cell for each size, and the sums. Tab
// and Enter go from cell to cell; arrows go up and down among the colours, and past the end of a cell to the
// next.

#include "app/slips/typed_values.h"
#include "core/facts/blank_style.h"

#include <QWidget>

#include <string>
#include <vector>

class QVBoxLayout;

namespace holdfast::app {

class Field;
class Label;

class DeliveryGrid : public QWidget, public KeepsTyped {
    Q_OBJECT

public:
    // Names of controls begin with `name`: there may be two grids in a form.
    explicit DeliveryGrid(const QString& name, QWidget* parent = nullptr);

    void setKinds(const std::vector<std::string>& sizes, const std::vector<Colour>& colours);
    // Where the keyboard comes in.
    void beginAt(const std::string& size, ColourId colour);

    struct Cell {
        std::string size;
        ColourId colour;
        std::int64_t units = 0;
    };
    std::vector<Cell> filled() const; // those of 1 and more
    // What is wrong, cell by cell, empty where nothing is; the keyboard goes to the first of them.
    QString wrong();
    bool isEmpty() const;

    QVariant typed() const override;
    void putBack(const QVariant& typed) override;

signals:
    void changed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Row {
        Colour colour;
        Label* sum = nullptr;
        std::vector<Field*> cells;
    };

    Row makeRow(const Colour& colour, int at);
    Field* makeCell(const Colour& colour, const QString& size, int row, int column);
    void showSums();
    bool goBy(const QObject* editor, int rows, int columns);

    QString m_name;
    QVBoxLayout* m_column = nullptr;
    QWidget* m_whole = nullptr;
    Label* m_sums = nullptr;
    std::vector<std::string> m_sizes;
    std::vector<Row> m_rows;
};

} // namespace holdfast::app
