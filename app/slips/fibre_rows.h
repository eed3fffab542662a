// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The fibres of a label as rows of fibre and share, and what they add to, said as it is typed.

#include "app/slips/typed_values.h"
#include "core/facts/blank_style.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace holdfast::app {

class Button;
class Field;
class Label;
class PickList;

class FibreRows : public QWidget, public KeepsTyped {
    Q_OBJECT

public:
    explicit FibreRows(const std::vector<FibreShare>& fibres, QWidget* parent = nullptr);

    // Rows without a share are left out. A share that is no whole number counts as −1, which no label allows.
    std::vector<FibreShare> fibres() const;
    bool isFilled() const; // adds to 100
    int sum() const;

    QVariant typed() const override;
    void putBack(const QVariant& typed) override;

signals:
    void changed();

private:
    struct Row {
        PickList* fibre;
        Field* share;
    };

    Row& addRow(Fibre fibre, const QString& share);
    Fibre nextFibre() const;
    void showSum();

    std::vector<Row> m_rows;
    QVBoxLayout* m_column = nullptr;
    Label* m_sum = nullptr;
    Button* m_add = nullptr;
};

// Every fibre by name, in the order of Fibre.
inline constexpr int kFibreCount = static_cast<int>(Fibre::Other) + 1;

} // namespace holdfast::app
