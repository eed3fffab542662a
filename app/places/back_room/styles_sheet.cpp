// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"
#include "app/places/back_room/retired_lines.h"
#include "app/places/back_room/tools_sheets.h"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace holdfast::app {

namespace {

class StyleWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    static void add(RoomSheet& sheet, const ReckonedShop& shop, const BlankStyle& style) {
        SlipTarget matter;
        matter.style = style.id;
        RoomLine line;
        line.name = words(style.name);
        line.text = tr("%1, %2 g; in %3")
                        .arg(money(style.cost, shop.facts.settings.currency))
                        .arg(style.weight.value)
                        .arg(listOf(style.sizes));
        line.detail = tr("%1; %n on the rail", nullptr, howMany(onRail(shop, style))).arg(coloursOf(style));
        if (style.isRetired) {
            markRetired(line);
        } else if (!style.label) {
            line.tone = Tone::Held;
            line.stateIcon = QStringLiteral("hold");
            line.state = tr("label not read");
        }
        line.offer = tr("Change style");
        line.deed = OpenSlip{SlipName::ChangeStyle, matter};
        line.otherOffer = tr("Add one like it");
        line.otherDeed = OpenSlip{SlipName::CopyStyle, matter};
        sheet.lines.append(line);
    }

private:
    static QString listOf(const std::vector<std::string>& names) {
        QStringList list;
        for (const std::string& name : names)
            list.append(words(name));
        return list.join(QStringLiteral(", "));
    }

    static QString coloursOf(const BlankStyle& style) {
        std::vector<std::string> names;
        for (const Colour& colour : style.colours)
            if (!colour.isRetired)
                names.push_back(colour.name);
        return listOf(names);
    }

    static std::int64_t onRail(const ReckonedShop& shop, const BlankStyle& style) {
        std::int64_t units = 0;
        for (const BlankLot& lot : shop.facts.lots)
            units += lot.style == style.id ? lot.unitsLeft : 0;
        return units;
    }
};

} // namespace

RoomSheet stylesSheet(const ReckonedShop& shop) {
    RoomSheet sheet;
    sheet.title = StyleWords::tr("Blank styles");
    const auto offered = addOfferedFirst(
        sheet, shop.facts.styles, [&](const BlankStyle& style) { StyleWords::add(sheet, shop, style); });
    sheet.summary = offered == 0 ? StyleWords::tr("none yet") : QString::number(offered);
    sheet.intro = sheet.lines.isEmpty()
                      ? StyleWords::tr("Blank styles are listed here, each with its cost, sizes and colours.")
                      : StyleWords::tr("What a style costs is the base of its prices; suppliers change it.");
    sheet.acts.append({StyleWords::tr("Add a blank style"), QStringLiteral("plus"), QKeySequence(Qt::Key_A),
                       OpenSlip{SlipName::AddStyle, SlipTarget{}}});
    return sheet;
}

} // namespace holdfast::app
