// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/day_sheet_blocks.h"

#include "app/desk/aside_words.h"
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/papers/press_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <map>

namespace holdfast::app {

namespace {

constexpr double kTickSide = 6;
constexpr double kTimeLeft = 9.5;
constexpr double kTextLeft = 28;
constexpr double kTextWidth = kPageWidth - kTextLeft;

constexpr PaperType kBlockNumber{6, QFont::Bold};
constexpr PaperType kBlockTime{5.2, QFont::DemiBold};
constexpr PaperType kBlockName{4.8, QFont::DemiBold};
constexpr PaperType kBlockWork{4.2, QFont::Medium};
constexpr PaperType kBlockPlain{3.8, QFont::Normal};
constexpr PaperType kBlockCaution{3.3, QFont::Normal};

struct DayWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::DaySheet)
};

QString joined(const QStringList& parts) {
    return parts.join(QStringLiteral("; "));
}

double heightOf(double width, const QString& text, const PaperType& type) {
    return static_cast<double>(brokenInto(width, text, type).size()) * lineStep(type);
}

QString clockAt(const ReckonedShop& shop, Instant when) {
    return clock(shop.now.toLocal(when));
}

// A line of its own for each decal: what, where, how large, how far down.
QStringList decalLines(const Garment& garment) {
    QStringList lines;
    for (const Decal& decal : garment.decals)
        lines << DayWords::tr("%1, %2, %3 × %4 mm, %5 mm down")
                     .arg(words(decal.describe()), words(placementName(decal.placement)))
                     .arg(decal.width.value)
                     .arg(decal.height.value)
                     .arg(decal.below.value);
    return lines;
}

QString lateWords(const WalkEntry& entry) {
    QStringList said;
    if (entry.late.count() > 0)
        said << DayWords::tr("%1 late for its promise").arg(timeSpan(entry.late));
    if (entry.isAfterClosing)
        said << DayWords::tr("after closing");
    return joined(said);
}

QString stateOf(const WalkEntry& entry) {
    switch (entry.state) {
    case WalkState::OnPress:
        return DayWords::tr("on the press");
    case WalkState::Cooling:
        return DayWords::tr("cooling");
    case WalkState::Pressed:
    case WalkState::Planned:
        break;
    }
    return {};
}

// A garment's number with its blank after it, and at the right what must not be missed.
struct GarmentLine {
    QString number;
    QString name;
    QString right;

    void draw(PaperInk& ink) const {
        const double rightWidth = right.isEmpty() ? 0 : paperWidth(right, kBlockPlain) + 4;
        ink.line({kTextLeft, 6}, number, kBlockNumber);
        const double left = kTextLeft + paperWidth(number, kBlockNumber) + 3.5;
        const double room = kPageWidth - left - rightWidth;
        const PaperType type = shrunkTo(room, name, kBlockName, 2.8);
        ink.line({left, 6}, cutTo(room, name, type), type);
        ink.line({kPageWidth, 6}, right, kBlockPlain, Across::Right);
    }
};

// What is done needs no steps any more.
PageBlock pressedBlock(const ReckonedShop& shop, const WalkEntry& entry) {
    const Garment& garment = shop.facts.garments.at(entry.garment);
    const GarmentLine head{garmentNumber(shop.facts, garment), garmentName(shop.facts, garment),
                           DayWords::tr("pressed")};
    return {9, [head, time = clockAt(shop, entry.begins)](PaperInk& ink) {
                ink.tickBox({0, 1}, kTickSide, true);
                ink.line({kTimeLeft, 6}, time, kBlockTime);
                head.draw(ink);
            }};
}

PageBlock garmentBlock(const ReckonedShop& shop, const WalkEntry& entry) {
    if (entry.state == WalkState::Pressed)
        return pressedBlock(shop, entry);
    const Garment& garment = shop.facts.garments.at(entry.garment);
    const Order& order = shop.facts.orderOf(garment);
    const GarmentLine head{garmentNumber(shop.facts, garment), garmentName(shop.facts, garment),
                           DayWords::tr("for %1 %2").arg(day(dateOf(order.promised)), clock(order.promised))};
    const QString time = clockAt(shop, entry.begins);
    const QString work = workWords(shop.of(entry.garment).route);
    const QStringList decals = decalLines(garment);
    QStringList said{lateWords(entry), stateOf(entry)};
    said.removeAll(QString());

    double height = 8.2 + heightOf(kTextWidth, work, kBlockWork) + 3.4;
    for (const QString& decal : decals)
        height += heightOf(kTextWidth, decal, kBlockPlain);
    if (!said.isEmpty())
        height += heightOf(kTextWidth, joined(said), kBlockWork);
    return {height, [=](PaperInk& ink) {
                ink.tickBox({0, 1}, kTickSide);
                ink.line({kTimeLeft, 6}, time, kBlockTime);
                head.draw(ink);
                double y = ink.lines({kTextLeft, 8.2}, kTextWidth, work, kBlockWork);
                for (const QString& decal : decals)
                    y = ink.lines({kTextLeft, y}, kTextWidth, decal, kBlockPlain);
                if (!said.isEmpty())
                    ink.lines({kTextLeft, y}, kTextWidth, joined(said),
                              {kBlockWork.millimetres, QFont::Bold});
            }};
}

QString runHeading(const ReckonedShop& shop, const WalkRun& run, int number) {
    const Press* press = shop.facts.presses.find(run.press);
    return DayWords::tr("Run %1   %2   %3–%4%5")
        .arg(number)
        .arg(celsius(run.temperature), clockAt(shop, run.begins), clockAt(shop, run.ends),
             press ? QStringLiteral("   ") + words(press->name) : QString());
}

QString changeWords(const WalkRun& run) {
    if (!run.changedFrom || run.change.count() <= 0)
        return {};
    return (*run.changedFrom < run.temperature ? DayWords::tr("First heat up from %1, %2.")
                                               : DayWords::tr("First let it cool from %1, %2."))
        .arg(celsius(*run.changedFrom), timeSpan(run.change));
}

// What a roll is taken down for.
struct RollUse {
    QStringList garments;
};

} // namespace

PageBlock cautionBlock() {
    const QString said = DayWords::tr(
        "Platens burn: keep hands clear, never leave a hot press alone. Ventilate, and follow the film’s "
        "safety "
        "data sheet. Electrics: a licensed electrician. Children’s garments: check the local law.");
    constexpr double kInside = 3;
    const double high = heightOf(kPageWidth - 2 * kInside, said, kBlockCaution) + 2 * kInside - 1;
    return {high + 4, [said, high](PaperInk& ink) {
                ink.frame({0, 0, kPageWidth, high}, 0.4, 1.5);
                ink.lines({kInside, kInside - 0.4}, kPageWidth - 2 * kInside, said, kBlockCaution);
            }};
}

std::vector<PageBlock> runBlocks(const ReckonedShop& shop, const WalkRun& run, int number) {
    const QString heading = runHeading(shop, run, number);
    const QString change = changeWords(run);
    std::vector<PageBlock> blocks{headingBlock(heading)};
    if (!change.isEmpty()) {
        PageBlock changed = sentenceBlock(change);
        changed.leads = true;
        blocks.push_back(std::move(changed));
    }
    for (const WalkEntry& entry : run.entries)
        blocks.push_back(garmentBlock(shop, entry));
    return blocks;
}

PageBlock asideBlock(const ReckonedShop& shop, const AsideEntry& entry) {
    const Garment& garment = shop.facts.garments.at(entry.garment);
    const Order& order = shop.facts.orderOf(garment);
    const GarmentLine head{garmentNumber(shop.facts, garment), garmentName(shop.facts, garment),
                           DayWords::tr("for %1 %2").arg(day(dateOf(order.promised)), clock(order.promised))};
    QString what = entry.isHeld ? DayWords::tr("Held: %1").arg(words(entry.what)) : words(entry.what);
    what += DayWords::tr(". Needed: %1").arg(withinLine(neededInWords(shop, entry)));
    const QString why = words(entry.why);
    const double height =
        8.2 + heightOf(kTextWidth, what, kBlockWork) + heightOf(kTextWidth, why, kBlockPlain) + 3.4;
    return {height, [head, what, why](PaperInk& ink) {
                ink.tickBox({0, 1}, kTickSide);
                head.draw(ink);
                const double y = ink.lines({kTextLeft, 8.2}, kTextWidth, what, kBlockWork);
                ink.lines({kTextLeft, y}, kTextWidth, why, kBlockPlain);
            }};
}

std::vector<PageBlock> rollBlocks(const ReckonedShop& shop, const Walk& walk) {
    std::map<RollId, RollUse> rolls;
    for (const AsideEntry& entry : walk.aside) {
        const Garment& garment = shop.facts.garments.at(entry.garment);
        for (const Decal& decal : garment.decals) {
            const auto found = shop.allotment.rollOf.find(decal.id);
            if (entry.isHeld || entry.stage != Stage::ToCut || decal.isCut() ||
                found == shop.allotment.rollOf.end())
                continue;
            const QString number = garmentNumber(shop.facts, garment);
            if (QStringList& of = rolls[found->second].garments; !of.contains(number))
                of << number;
        }
    }
    std::vector<PageBlock> blocks;
    if (!rolls.empty())
        blocks.push_back(headingBlock(DayWords::tr("Rolls to take down, for what is still to be cut")));
    for (const auto& [id, use] : rolls) {
        const FilmRoll& roll = shop.facts.rolls.at(id);
        const StoragePlace* place = roll.placeNow() ? shop.facts.places.find(*roll.placeNow()) : nullptr;
        const GarmentLine head{words(roll.label()), words(shop.facts.films.at(roll.film).name()),
                               place ? words(place->name) : QString()};
        const QString of =
            DayWords::tr("%1 left, for %2").arg(metres(roll.left), use.garments.join(QStringLiteral(", ")));
        blocks.push_back({8.2 + heightOf(kTextWidth, of, kBlockPlain) + 2.4, [head, of](PaperInk& ink) {
                              ink.tickBox({0, 1}, kTickSide);
                              head.draw(ink);
                              ink.lines({kTextLeft, 8.2}, kTextWidth, of, kBlockPlain);
                          }});
    }
    return blocks;
}

} // namespace holdfast::app
