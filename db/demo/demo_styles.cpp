// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/blank_actions.h"
#include "db/demo/demo_blanks.h"
#include "db/demo/demo_workshop.h"

namespace holdfast::db::demo {
namespace {

using namespace literals;

constexpr std::uint32_t kFog = 0xc5cbc8, kInk = 0x303b55, kMoss = 0x66754c, kBrick = 0x9b4637,
                        kChalk = 0xf1efe6, kSlate = 0x5d6b78, kRose = 0xcd8f8a, kReed = 0xa9bcae,
                        kOat = 0xddd2bc;

FabricLabel label(std::vector<FibreShare> fibres, Stretch stretch, Celsius highestSafe, LocalDate readOn) {
    FabricLabel read;
    read.fibres = std::move(fibres);
    read.stretch = stretch;
    read.highestSafe = highestSafe;
    read.care.ironCelsius = 150;
    read.readOn = readOn;
    return read;
}

BlankStyle style(const char* name, const char* outline, Grams weight, Money cost) {
    BlankStyle made;
    made.name = name;
    made.outline = outline;
    made.weight = weight;
    made.cost = cost;
    made.supplier = "Lowmoor Knitwear";
    return made;
}

BlankStyle tee(LocalDate today) {
    BlankStyle made = style("Tee", "tee", 180_g, {430});
    made.sizes = {"XS", "S", "M", "L", "XL", "2XL", "3XL"};
    made.colours = {{{}, "Fog", kFog},     {{}, "Ink", kInk},     {{}, "Moss", kMoss}, {{}, "Brick", kBrick},
                    {{}, "Chalk", kChalk}, {{}, "Slate", kSlate}, {{}, "Rose", kRose}};
    made.label = label({{Fibre::Cotton, 100}}, Stretch::Some, 190_C, today);
    return made;
}

BlankStyle longSleeve(LocalDate today) {
    BlankStyle made = style("Long sleeve", "long-sleeve", 240_g, {690});
    made.sizes = {"S", "M", "L", "XL", "2XL"};
    made.colours = {{{}, "Moss", kMoss}, {{}, "Brick", kBrick}, {{}, "Ink", kInk}, {{}, "Chalk", kChalk}};
    made.label = label({{Fibre::Cotton, 100}}, Stretch::Some, 190_C, today);
    return made;
}

BlankStyle zipHoodie(LocalDate today) {
    BlankStyle made = style("Zip hoodie", "hoodie", 520_g, {1480});
    made.sizes = {"S", "M", "L", "XL"};
    made.colours = {{{}, "Ink", kInk}, {{}, "Reed", kReed}};
    made.obstacles = {{Obstacle::Zip, WayRound::Pillow}};
    made.hasCords = true;
    made.label = label({{Fibre::Cotton, 80}, {Fibre::Polyester, 20}}, Stretch::Some, 170_C, today);
    made.label->care.tumble = Tumble::No;
    return made;
}

BlankStyle tote(LocalDate today) {
    BlankStyle made = style("Tote", "tote", 160_g, {310});
    made.sizes = {"One size"};
    made.colours = {{{}, "Oat", kOat}, {{}, "Slate", kSlate}};
    made.label = label({{Fibre::Cotton, 100}}, Stretch::None, 200_C, today);
    made.label->care.washCelsius = 30;
    return made;
}

BlankStyle bodysuit(LocalDate today) {
    BlankStyle made = style("Bodysuit", "bodysuit", 90_g, {360});
    made.sizes = {"0–3 months", "3–6 months", "6–12 months", "12–18 months"};
    made.colours = {{{}, "Rose", kRose}, {{}, "Chalk", kChalk}};
    made.obstacles = {{Obstacle::Buttons, WayRound::Turn}};
    made.forChild = true;
    made.label = label({{Fibre::Cotton, 95}, {Fibre::Elastane, 5}}, Stretch::High, 145_C, today);
    return made;
}

BlankStyle bib(LocalDate today) {
    BlankStyle made = style("Bib", "bib", 70_g, {210});
    made.sizes = {"One size"};
    made.colours = {{{}, "Chalk", kChalk}, {{}, "Fog", kFog}};
    made.forChild = true;
    made.label = label({{Fibre::Cotton, 100}}, Stretch::None, 190_C, today);
    return made;
}

BlankStyle apron(LocalDate today) {
    BlankStyle made = style("Apron", "apron", 210_g, {780});
    made.sizes = {"One size"};
    made.colours = {{{}, "Slate", kSlate}, {{}, "Oat", kOat}};
    made.obstacles = {{Obstacle::Seams, WayRound::Turn}};
    made.label = label({{Fibre::Polyester, 65}, {Fibre::Cotton, 35}}, Stretch::None, 170_C, today);
    made.label->coating = Coating::WaterRepellent;
    return made;
}

// New on the rail: nobody has read its label, or thought of its top button.
BlankStyle cap() {
    BlankStyle made = style("Cap", "cap", 85_g, {520});
    made.sizes = {"One size"};
    made.colours = {{{}, "Ink", kInk}, {{}, "Moss", kMoss}};
    made.obstacles = {{Obstacle::Seams, WayRound::SmallPlaten}, {Obstacle::Buttons, std::nullopt}};
    return made;
}

void write(Script& script, const BlankStyle& made) {
    script.named.styles[made.name] = done(addStyle(script.shop(), made));
    script.wait(Seconds{70});
}

} // namespace

void writeStyles(Script& script) {
    script.at(kFirstDay, clockAt(8, 25), [&script] {
        const LocalDate today = script.now().today();
        for (const BlankStyle& made : {tee(today), longSleeve(today), zipHoodie(today), tote(today),
                                       bodysuit(today), bib(today), apron(today)})
            write(script, made);
    });
    script.at(kFirstDay + 1, clockAt(10, 30), [&script] {
        done(markNotPrewashed(script.shop(), script.named.styles.at("Tote"),
                              "the canvas keeps every crease of its first wash"));
    });
    script.at(kFirstDay + 1, clockAt(10, 40), [&script] {
        done(noteLawChecked(script.shop(), script.named.styles.at("Zip hoodie"), "Ines"));
        done(noteLawChecked(script.shop(), script.named.styles.at("Bib"), "Ines"));
    });
    script.at(-24, clockAt(9, 30), [&script] { write(script, cap()); });
}

} // namespace holdfast::db::demo
