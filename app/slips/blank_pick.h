// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The parts of a form that ask for a blank: style, size and colour, with what is in stock of each.

#include "app/desk/shop_desk.h"

#include <QObject>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

class Choice;
class Form;
class Label;
class PickList;

class BlankPick : public QObject {
    Q_OBJECT

public:
    // What the matter says of style, size and colour is chosen already.
    BlankPick(Form& form, ShopDesk& desk, const SlipTarget& matter);

    // What is chosen; the parts that are not are marked.
    struct Kind {
        BlankStyleId style;
        std::string size;
        ColourId colour;
    };
    Kind read();

    const BlankStyle* style() const;
    std::optional<std::string> size() const;
    std::optional<ColourId> colour() const;

signals:
    void changed();

private:
    // All that depends on the style; size and colour as named, where the style has them.
    void showStyle(const std::string& size, const QString& colourName);
    void showSizes(const std::string& size);
    void showStock();

    Form& m_form;
    ShopDesk& m_desk;
    std::vector<BlankStyle> m_styles;
    PickList* m_style = nullptr;
    Choice* m_sizes = nullptr;
    PickList* m_colour = nullptr;
    Label* m_stock = nullptr;
};

} // namespace holdfast::app
