// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/column_words.h"

#include <algorithm>
#include <array>

namespace holdfast::db {

namespace {

struct ColumnWords {
    std::string_view column;
    Phrase words;
};

constexpr std::array kColumnWords{
    // orders, garments, decals
    ColumnWords{"number", phrase("number")},
    ColumnWords{"customer_id", phrase("customer")},
    ColumnWords{"state", phrase("state")},
    ColumnWords{"taken_at", phrase("day it was taken")},
    ColumnWords{"taken_at_place", phrase("place it was taken at")},
    ColumnWords{"promised", phrase("promise")},
    ColumnWords{"handed_over_at", phrase("handing over")},
    ColumnWords{"cancelled_at", phrase("cancelling")},
    ColumnWords{"note", phrase("note")},
    ColumnWords{"joined_to", phrase("joining with another customer")},
    ColumnWords{"name", phrase("name")},
    ColumnWords{"phone", phrase("phone number")},
    ColumnWords{"order_id", phrase("order")},
    ColumnWords{"forgotten_id", phrase("forgotten customer")},
    ColumnWords{"position", phrase("place in the order of things")},
    ColumnWords{"style_id", phrase("blank style")},
    ColumnWords{"size", phrase("size")},
    ColumnWords{"colour_id", phrase("colour")},
    ColumnWords{"lot_id", phrase("reserved blank")},
    ColumnWords{"price_minor", phrase("price")},
    ColumnWords{"attempt", phrase("count of attempts")},
    ColumnWords{"garment_id", phrase("garment")},
    ColumnWords{"film_id", phrase("film")},
    ColumnWords{"artwork", phrase("artwork")},
    ColumnWords{"wording", phrase("wording")},
    ColumnWords{"face", phrase("face of its letters")},
    ColumnWords{"placement", phrase("placement")},
    ColumnWords{"below_mm", phrase("distance from the top")},
    ColumnWords{"aside_mm", phrase("distance from the middle")},
    ColumnWords{"width_mm", phrase("width")},
    ColumnWords{"height_mm", phrase("height")},
    ColumnWords{"layer", phrase("layer")},
    ColumnWords{"confirmed_by", phrase("confirmation")},
    ColumnWords{"cut_roll_id", phrase("roll it was cut from")},
    ColumnWords{"cut_at", phrase("cutting")},
    ColumnWords{"minor", phrase("amount")},
    ColumnWords{"kind", phrase("kind")},
    ColumnWords{"how", phrase("way of paying")},
    ColumnWords{"at", phrase("time")},
    ColumnWords{"rule", phrase("rule")},
    ColumnWords{"reason", phrase("reason")},
    ColumnWords{"cause", phrase("cause")},
    ColumnWords{"step_key", phrase("step")},
    ColumnWords{"press_id", phrase("press")},
    ColumnWords{"started_at", phrase("start")},
    ColumnWords{"finished_at", phrase("finish")},
    // what came back
    ColumnWords{"decal_id", phrase("decal")},
    ColumnWords{"told_on", phrase("day it was reported")},
    ColumnWords{"fault", phrase("fault")},
    ColumnWords{"washes", phrase("count of washes")},
    ColumnWords{"answer", phrase("answer")},
    ColumnWords{"answered_on", phrase("day of the answer")},
    // blanks
    ColumnWords{"outline", phrase("outline")},
    ColumnWords{"weight_g", phrase("weight")},
    ColumnWords{"cost_minor", phrase("cost")},
    ColumnWords{"not_prewashed_because", phrase("reason not to wash it first")},
    ColumnWords{"for_child", phrase("mark “for a child”")},
    ColumnWords{"sleepwear", phrase("mark “sleepwear”")},
    ColumnWords{"has_cords", phrase("mark “has cords”")},
    ColumnWords{"law_checked_by", phrase("check of local law")},
    ColumnWords{"label_read_on", phrase("reading of the label")},
    ColumnWords{"stretch", phrase("stretch")},
    ColumnWords{"coating", phrase("coating")},
    ColumnWords{"highest_safe_c", phrase("highest safe temperature")},
    ColumnWords{"care_wash_c", phrase("washing temperature")},
    ColumnWords{"care_agitation", phrase("way of washing")},
    ColumnWords{"care_tumble", phrase("tumble drying")},
    ColumnWords{"care_iron_c", phrase("ironing")},
    ColumnWords{"care_bleach", phrase("bleaching")},
    ColumnWords{"care_cleaning", phrase("dry cleaning")},
    ColumnWords{"retired_at", phrase("retiring")},
    ColumnWords{"rank", phrase("place in the order of things")},
    ColumnWords{"rgb", phrase("shade")},
    ColumnWords{"percent", phrase("share")},
    ColumnWords{"way", phrase("way round")},
    ColumnWords{"parent_id", phrase("lot it comes from")},
    ColumnWords{"received_on", phrase("day it was received")},
    ColumnWords{"last_load_id", phrase("wash")},
    ColumnWords{"length_before_mm", phrase("length before washing")},
    ColumnWords{"length_after_mm", phrase("length after washing")},
    ColumnWords{"width_before_mm", phrase("width before washing")},
    ColumnWords{"width_after_mm", phrase("width after washing")},
    ColumnWords{"units", phrase("number of blanks")},
    ColumnWords{"detergent", phrase("detergent")},
    ColumnWords{"softener", phrase("softener")},
    ColumnWords{"water_c", phrase("temperature of the water")},
    ColumnWords{"drying", phrase("way of drying")},
    ColumnWords{"dryer_sheet", phrase("dryer sheet")},
    ColumnWords{"dry_at", phrase("drying")},
    // film
    ColumnWords{"finish", phrase("finish")},
    ColumnWords{"shade", phrase("shade")},
    ColumnWords{"recipe_c", phrase("temperature")},
    ColumnWords{"dwell_s", phrase("dwell")},
    ColumnWords{"pressure", phrase("pressure")},
    ColumnWords{"peel", phrase("peel")},
    ColumnWords{"preheat_s", phrase("preheat")},
    ColumnWords{"cool_s", phrase("cooling")},
    ColumnWords{"finish_front_s", phrase("finishing press on the front")},
    ColumnWords{"finish_back_s", phrase("finishing press on the back")},
    ColumnWords{"tack_s", phrase("first press of a layer")},
    ColumnWords{"recipe_confirmed_by", phrase("confirmed recipe")},
    ColumnWords{"follows", phrase("stretch it can follow")},
    ColumnWords{"grips_coated", phrase("grip on coated cloth")},
    ColumnWords{"shelf_life_days", phrase("shelf life")},
    ColumnWords{"humidity_low", phrase("lowest humidity")},
    ColumnWords{"humidity_high", phrase("highest humidity")},
    ColumnWords{"store_low_c", phrase("lowest temperature in store")},
    ColumnWords{"store_high_c", phrase("highest temperature in store")},
    ColumnWords{"allowed_outside_h", phrase("hours allowed outside the limits")},
    ColumnWords{"q10", phrase("ageing by warmth")},
    ColumnWords{"reference_c", phrase("reference temperature")},
    ColumnWords{"strip_extends_days", phrase("days that a test strip adds")},
    ColumnWords{"may_lie_under", phrase("mark “may lie under another”")},
    ColumnWords{"may_lie_over", phrase("mark “may lie over another”")},
    ColumnWords{"has_grain", phrase("grain")},
    ColumnWords{"roll_width_mm", phrase("usual width of a roll")},
    ColumnWords{"cost_per_metre", phrase("cost of a metre")},
    ColumnWords{"made_on", phrase("day it was made")},
    ColumnWords{"printed_use_by", phrase("printed use-by")},
    ColumnWords{"roll_id", phrase("roll")},
    ColumnWords{"place_id", phrase("storage place")},
    ColumnWords{"since", phrase("day it was moved")},
    ColumnWords{"passed", phrase("result")},
    ColumnWords{"extends_days", phrase("days added")},
    ColumnWords{"mm", phrase("length")},
    ColumnWords{"celsius", phrase("temperature")},
    ColumnWords{"humidity", phrase("humidity")},
    // presses
    ColumnWords{"platen_width_mm", phrase("width of the platen")},
    ColumnWords{"platen_height_mm", phrase("height of the platen")},
    ColumnWords{"has_small_platen", phrase("small platen")},
    ColumnWords{"heats_per_minute", phrase("speed of heating")},
    ColumnWords{"cools_per_minute", phrase("speed of cooling")},
    ColumnWords{"tolerance_c", phrase("allowed average error")},
    ColumnWords{"even_within_c", phrase("allowed difference between spots")},
    ColumnWords{"check_every_days", phrase("days between checks")},
    ColumnWords{"set_c", phrase("set temperature")},
    ColumnWords{"by_whom", phrase("name of who checked")},
    // fairs and the shop's own numbers
    ColumnWords{"first_day", phrase("first day")},
    ColumnWords{"last_day", phrase("last day")},
    ColumnWords{"opens_min", phrase("opening time")},
    ColumnWords{"closes_min", phrase("closing time")},
    ColumnWords{"stall_minor", phrase("cost of the stall")},
    ColumnWords{"other_minor", phrase("other costs")},
    ColumnWords{"worked_min", phrase("hours worked")},
    ColumnWords{"value", phrase("value")},
    ColumnWords{"day", phrase("day")},
    // of the order’s line in the order book
    ColumnWords{"total_minor", phrase("total")},
    ColumnWords{"paid_minor", phrase("sum of payments")},
    // what tells rows apart
    ColumnWords{"id", phrase("number in the file")},
    ColumnWords{"fibre", phrase("fibre")},
    ColumnWords{"obstacle", phrase("obstacle")},
    ColumnWords{"spot", phrase("spot")},
};

} // namespace

std::optional<Phrase> columnWords(std::string_view column) {
    const auto* found = std::ranges::find(kColumnWords, column, &ColumnWords::column);
    return found == kColumnWords.end() ? std::nullopt : std::optional{found->words};
}

Phrase columnNamed(std::string_view column) {
    return columnWords(column).value_or(phrase("entry"));
}

} // namespace holdfast::db
