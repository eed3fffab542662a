// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/blank_pick.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/slips/slip_words.h"
#include "app/widgets/label.h"

#include <algorithm>

namespace holdfast::app {

BlankPick::BlankPick(Form& form, ShopDesk& desk, const SlipTarget& matter)
    : QObject(&form)
    , m_form(form)
    , m_desk(desk) {
    const auto wanted = styleIn(desk, matter);
    QVector<PickItem> items;
    int at = -1;
    for (BlankStyle style : desk.shop()->facts.styles) {
        // What is retired is not offered; a garment that has such a blank keeps it.
        const bool isItsOwn = wanted && wanted->id == style.id;
        if (style.isRetired && !isItsOwn)
            continue;
        std::erase_if(style.colours, [&](const Colour& colour) {
            return colour.isRetired && !(isItsOwn && matter.colour == colour.id);
        });
        if (wanted && wanted->id == style.id)
            at = static_cast<int>(m_styles.size());
        m_styles.push_back(style);
        items.append({words(style.name)});
    }
    if (m_styles.size() == 1)
        at = 0;
    m_style = form.list("style", tr("Style"), items, at);
    m_sizes = form.tiles("size", tr("Size"), Choice::Shape::Stacked, {});
    m_colour = form.list("colour", tr("Colour"), {});
    m_stock = form.note({});
    const Colour* asked = wanted && matter.colour ? wanted->colour(*matter.colour) : nullptr;
    showStyle(plain(matter.size), asked ? words(asked->name) : QString());
    connect(m_style, &QComboBox::currentIndexChanged, this, [this] {
        showStyle(size().value_or(std::string()), m_colour->currentText());
        emit changed();
    });
    connect(m_sizes, &Choice::chosen, this, [this] {
        showStock();
        emit changed();
    });
    connect(m_colour, &QComboBox::currentIndexChanged, this, [this] {
        showSizes(size().value_or(std::string()));
        emit changed();
    });
}

const BlankStyle* BlankPick::style() const {
    const int at = m_style->currentIndex();
    return at < 0 ? nullptr : &m_styles[static_cast<std::size_t>(at)];
}

std::optional<std::string> BlankPick::size() const {
    const int at = m_sizes->chosenAt();
    return at < 0 ? std::nullopt : std::optional{plain(m_sizes->items()[at].text)};
}

std::optional<ColourId> BlankPick::colour() const {
    const BlankStyle* chosen = style();
    const int at = m_colour->currentIndex();
    if (!chosen || at < 0 || at >= static_cast<int>(chosen->colours.size()))
        return std::nullopt;
    return chosen->colours[static_cast<std::size_t>(at)].id;
}

void BlankPick::showStyle(const std::string& size, const QString& colourName) {
    QVector<PickItem> colours;
    int colourAt = -1;
    if (const BlankStyle* chosen = style()) {
        for (const Colour& each : chosen->colours) {
            if (words(each.name) == colourName || chosen->colours.size() == 1)
                colourAt = static_cast<int>(colours.size());
            colours.append({words(each.name), colourOf(each.rgb)});
        }
    }
    m_colour->setItems(colours, colourAt);
    showSizes(size);
}

void BlankPick::showSizes(const std::string& size) {
    QVector<ChoiceItem> sizes;
    int at = -1;
    if (const BlankStyle* chosen = style()) {
        const ShopFacts& facts = m_desk.shop()->facts;
        for (const std::string& each : chosen->sizes) {
            const Stock stock = stockOf(facts, *chosen, each, colour());
            if (each == size || chosen->sizes.size() == 1)
                at = static_cast<int>(sizes.size());
            sizes.append(ChoiceItem{.text = words(each),
                                    .second = stock.all() > 0 ? tr("%1 left").arg(stock.all()) : tr("none"),
                                    .isInStock = stock.all() > 0});
        }
    }
    m_sizes->setColumns(columnsThatFit(sizes));
    m_sizes->setItems(sizes);
    m_sizes->setChosen(at);
    showStock();
}

void BlankPick::showStock() {
    const auto chosenSize = size();
    const auto chosenColour = colour();
    const bool isWhole = style() && chosenSize && chosenColour;
    m_stock->setVisible(isWhole);
    if (isWhole)
        m_stock->setText(
            tr("On the rail now: %1.")
                .arg(stockWords(stockOf(m_desk.shop()->facts, *style(), *chosenSize, chosenColour))));
}

BlankPick::Kind BlankPick::read() {
    Kind kind;
    m_form.chosen("style");
    m_form.chosen("size");
    m_form.chosen("colour");
    if (style())
        kind.style = style()->id;
    kind.size = size().value_or(std::string());
    kind.colour = colour().value_or(ColourId{});
    return kind;
}

} // namespace holdfast::app
