// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/blank_pick.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/slips/shade_picker.h"
#include "app/slips/slip_words.h"
#include "app/widgets/label.h"
#include "core/trade/limits.h"
#include "db/actions/blank_actions.h"

#include <algorithm>

namespace holdfast::app {

BlankPick::BlankPick(Form& form, ShopDesk& desk, const SlipTarget& matter, bool mayAddColour)
    : QObject(&form)
    , m_form(form)
    , m_desk(desk)
    , m_mayAddColour(mayAddColour) {
    const auto wanted = styleIn(desk, matter);
    QVector<PickItem> items;
    int at = -1;
    for (const BlankStyle& style : desk.shop()->facts.styles) {
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
    if (mayAddColour) {
        form.line("newColour", tr("Name of the new colour"));
        m_shade = new ShadePicker(tr("Shade of the new colour"));
        form.own("newShade", tr("Shade"), m_shade);
        connect(m_shade, &ShadePicker::changed, this, [this] { m_form.setError("newShade", {}); });
    }
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

bool BlankPick::isNewColour() const {
    const BlankStyle* chosen = style();
    return m_mayAddColour && chosen && m_colour->currentIndex() == static_cast<int>(chosen->colours.size());
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
        if (m_mayAddColour)
            colours.append({tr("A new colour")});
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
            const Stock stock = isNewColour() ? Stock{} : stockOf(facts, *chosen, each, colour());
            if (each == size || chosen->sizes.size() == 1)
                at = static_cast<int>(sizes.size());
            sizes.append(ChoiceItem{.text = words(each),
                                    .second = stock.all() > 0 ? tr("%1 left").arg(stock.all()) : tr("none"),
                                    .isInStock = stock.all() > 0 || m_mayAddColour});
        }
    }
    m_sizes->setColumns(columnsThatFit(sizes));
    m_sizes->setItems(sizes);
    m_sizes->setChosen(at);
    showStock();
}

void BlankPick::showStock() {
    if (m_mayAddColour) {
        m_form.setShown("newColour", isNewColour());
        m_form.setShown("newShade", isNewColour());
    }
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
    if (isNewColour()) {
        const auto name = typedText(plain(m_form.text("newColour")),
                                    {.field = "newColour", .what = phrase("The colour’s name"), .most = 40});
        if (!name.ok())
            m_form.showError(name.error());
        if (!m_shade->shade())
            m_form.setError("newShade", tr("Shade: six digits of red, green and blue, such as 66754c."));
    }
    if (style())
        kind.style = style()->id;
    kind.size = size().value_or(std::string());
    kind.colour = colour().value_or(ColourId{});
    return kind;
}

Result<ColourId> BlankPick::takenColour() {
    if (!isNewColour())
        return colour().value_or(ColourId{});
    const BlankStyleId id = style()->id;
    const std::string name = plain(m_form.text("newColour"));
    const auto added = db::addColour(m_desk.file(), id, name, m_shade->shade().value_or(0));
    return added.ok() ? added : fieldError("newColour", added.error().message);
}

} // namespace holdfast::app
