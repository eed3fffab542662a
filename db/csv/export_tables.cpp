// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/export_tables.h"

namespace holdfast::db {

namespace {

struct TablesOfTheTrade {
    using enum CellKind;

    static constexpr ExportColumn kCustomers[] = {{"Customer", Text}, {"Telephone", Text}, {"Note", Text}};

    static constexpr ExportColumn kOrders[] = {
        {"Order", Plain},      {"Customer", Text},      {"Telephone", Text},     {"State", Plain},
        {"Taken", When},       {"Taken at", Text},      {"Promised", LocalTime}, {"Handed over", When},
        {"Garments", Plain},   {"Price", Money},        {"Paid", Money},         {"Note", Text},
        {"Tax", Plain},        {"Tax rate (%)", Plain}, {"Taxed by", Plain},     {"Tax rounded", Plain},
        {"Valid until", Plain}};

    static constexpr ExportColumn kSettings[] = {{"Setting", Plain}, {"Value", Text}};

    static constexpr ExportColumn kGarments[] = {
        {"Garment", Garment},  {"Style", Text},       {"Size", Text},
        {"Colour", Text},      {"Price", Money},      {"Attempt", Plain},
        {"Blank kept", YesNo}, {"Handed over", When}, {"Cancelled", When}};

    static constexpr ExportColumn kDecals[] = {{"Garment", Garment},
                                               {"Finish", Text},
                                               {"Shade", Text},
                                               {"Artwork", Text},
                                               {"Wording", Text},
                                               {"Face", Plain},
                                               {"Placement", Plain},
                                               {"Below the seam (mm)", Plain},
                                               {"Beside the middle (mm)", Plain},
                                               {"Width (mm)", Plain},
                                               {"Height (mm)", Plain},
                                               {"Layer", Plain},
                                               {"Confirmed", Text},
                                               {"Cut from", Roll},
                                               {"Cut", When}};

    static constexpr ExportColumn kBillLines[] = {{"Order", Plain},
                                                  {"Kind", Plain},
                                                  {"Words", Text},
                                                  {"Amount", Money},
                                                  {"Part of the garments (%)", Plain}};

    static constexpr ExportColumn kInvoices[] = {{"Invoice", Text},
                                                 {"Kind", Plain},
                                                 {"Order", Plain},
                                                 {"Corrects", Text},
                                                 {"Reason", Text},
                                                 {"Made", Plain},
                                                 {"Handed over", Plain},
                                                 {"Shop", Text},
                                                 {"Shop’s address", Text},
                                                 {"Tax number", Text},
                                                 {"Lines at the foot", Text},
                                                 {"Customer", Text},
                                                 {"Customer’s address", Text},
                                                 {"Currency", Plain},
                                                 {"Tax", Plain},
                                                 {"Tax rate (%)", Plain},
                                                 {"Taxed by", Plain},
                                                 {"Tax rounded", Plain},
                                                 {"Tax called", Text},
                                                 {"Tax amount", Money},
                                                 {"Total", Money},
                                                 {"Paid when it was made", Money}};

    static constexpr ExportColumn kInvoiceRows[] = {{"Invoice", Text}, {"Words", Text}, {"Amount", Money}};

    static constexpr ExportColumn kMoney[] = {
        {"Order", Plain}, {"When", When}, {"Amount", Money}, {"Kind", Plain}, {"How", Plain}};

    static constexpr ExportColumn kReferences[] = {{"Order", Plain}, {"Web shop", Text}, {"Reference", Text}};

    static constexpr ExportColumn kFileColumns[] = {
        {"Web shop", Text}, {"Headings", Text}, {"Meaning", Plain}, {"Heading", Text}};

    static constexpr ExportColumn kFileItems[] = {
        {"Web shop", Text}, {"Headings", Text}, {"Item", Text}, {"Like", Garment}};

    static constexpr ExportColumn kStyles[] = {{"Style", Text},
                                               {"Drawing", Plain},
                                               {"Weight (g)", Plain},
                                               {"Cost", Money},
                                               {"Sizes", Text},
                                               {"Colours", Text},
                                               {"Obstacles", Text},
                                               {"Not washed first because", Text},
                                               {"For a child", YesNo},
                                               {"Sleepwear", YesNo},
                                               {"Cords", YesNo},
                                               {"Law checked by", Text},
                                               {"Label read", Plain},
                                               {"Fibres", Text},
                                               {"Stretch", Plain},
                                               {"Coating", Plain},
                                               {"Highest safe (°C)", Plain},
                                               {"Wash (°C)", Plain},
                                               {"Agitation", Plain},
                                               {"Tumble", Plain},
                                               {"Iron (°C)", Plain},
                                               {"Bleach", Plain},
                                               {"Solvents", Plain},
                                               {"Retired", YesNo},
                                               {"Supplier", Text}};

    static constexpr ExportColumn kLots[] = {{"Style", Text},
                                             {"Size", Text},
                                             {"Colour", Text},
                                             {"Units", Plain},
                                             {"Received", Plain},
                                             {"Units received", Plain},
                                             {"Washed", When},
                                             {"Dry", When},
                                             {"Length before (mm)", Plain},
                                             {"Length after (mm)", Plain},
                                             {"Width before (mm)", Plain},
                                             {"Width after (mm)", Plain},
                                             {"Detergent", Text},
                                             {"Softener", YesNo},
                                             {"Water (°C)", Plain},
                                             {"Drying", Plain},
                                             {"Dryer sheet", YesNo}};

    static constexpr ExportColumn kLotMoves[] = {
        {"Style", Text}, {"Size", Text},   {"Colour", Text}, {"Lot received", Plain},
        {"When", When},  {"Units", Plain}, {"Reason", Text}, {"Garment", Garment}};

    static constexpr ExportColumn kLoads[] = {
        {"Started", When}, {"Detergent", Text},    {"Softener", YesNo}, {"Water (°C)", Plain},
        {"Drying", Plain}, {"Dryer sheet", YesNo}, {"Dry", When},       {"Units", Plain}};

    static constexpr ExportColumn kFilms[] = {{"Finish", Text},
                                              {"Shade", Text},
                                              {"Colour", Rgb},
                                              {"Temperature (°C)", Plain},
                                              {"Dwell (s)", Plain},
                                              {"Pressure", Plain},
                                              {"Peel", Plain},
                                              {"Preheat (s)", Plain},
                                              {"Cool before peel (s)", Plain},
                                              {"Finish front (s)", Plain},
                                              {"Finish back (s)", Plain},
                                              {"Tack (s)", Plain},
                                              {"Recipe confirmed by", Text},
                                              {"Follows stretch", Plain},
                                              {"Grips coated cloth", YesNo},
                                              {"Not for", Text},
                                              {"Wash (°C)", Plain},
                                              {"Agitation", Plain},
                                              {"Tumble", Plain},
                                              {"Iron (°C)", Plain},
                                              {"Bleach", Plain},
                                              {"Solvents", Plain},
                                              {"Shelf life (days)", Plain},
                                              {"Humidity from (%)", Plain},
                                              {"Humidity to (%)", Plain},
                                              {"Stored from (°C)", Plain},
                                              {"Stored to (°C)", Plain},
                                              {"Allowed outside (h)", Plain},
                                              {"Ageing factor", Plain},
                                              {"Ageing reference (°C)", Plain},
                                              {"Test strip adds (days)", Plain},
                                              {"May lie under", YesNo},
                                              {"May lie over", YesNo},
                                              {"Grain", YesNo},
                                              {"Roll width (mm)", Plain},
                                              {"Cost of a metre", Money},
                                              {"Retired", YesNo},
                                              {"Supplier", Text}};

    static constexpr ExportColumn kRolls[] = {{"Roll", Roll},
                                              {"Finish", Text},
                                              {"Shade", Text},
                                              {"Width (mm)", Plain},
                                              {"Length (mm)", Plain},
                                              {"Received", Plain},
                                              {"Made", Plain},
                                              {"Printed use-by", Plain},
                                              {"Place", Text},
                                              {"State", Plain},
                                              {"Length received (mm)", Plain}};

    static constexpr ExportColumn kRollMoves[] = {
        {"Roll", Roll}, {"When", When}, {"Length (mm)", Plain}, {"Kind", Plain}, {"Reason", Text}};

    static constexpr ExportColumn kStrips[] = {
        {"Roll", Roll}, {"When", When}, {"Passed", YesNo}, {"Adds (days)", Plain}, {"Note", Text}};

    static constexpr ExportColumn kPlaces[] = {{"Place", Text}, {"Retired", YesNo}};

    static constexpr ExportColumn kReadings[] = {
        {"Place", Text}, {"When", Moment}, {"Temperature (°C)", Plain}, {"Humidity (%)", Plain}};

    static constexpr ExportColumn kPresses[] = {
        {"Press", Text},           {"Platen width (mm)", Plain},   {"Platen height (mm)", Plain},
        {"Small platen", YesNo},   {"Heats (°C a minute)", Plain}, {"Cools (°C a minute)", Plain},
        {"Tolerance (°C)", Plain}, {"Even within (°C)", Plain},    {"Checked every (days)", Plain},
        {"Retired", YesNo}};

    static constexpr ExportColumn kChecks[] = {
        {"Press", Text}, {"When", When}, {"Set (°C)", Plain}, {"By", Text}, {"Readings (°C)", Plain}};

    static constexpr ExportColumn kClaims[] = {{"Garment", Garment}, {"Decal", Text},    {"Told", Plain},
                                               {"Fault", Plain},     {"Washes", Plain},  {"Note", Text},
                                               {"Answer", Plain},    {"Answered", Plain}};

    static constexpr ExportColumn kFairs[] = {
        {"Fair", Text},         {"First day", Plain},    {"Last day", Plain},
        {"Opens", Plain},       {"Closes", Plain},       {"Stall", Money},
        {"Other costs", Money}, {"Worked (min)", Plain}, {"Note", Text}};

    static constexpr ExportColumn kTillCounts[] = {{"Day", Plain},     {"When", When},
                                                   {"Float", Money},   {"Cash", Money},
                                                   {"Counted", Money}, {"Difference", Money}};

    static constexpr ExportColumn kHistory[] = {
        {"When", When}, {"Laptop", Text}, {"Done", Text}, {"Taken back", YesNo}};

#define BARRED(text) "replace(replace(" text ", '\\', '\\\\'), '|', '\\|')"

    static constexpr ExportTable kExportTables[] = {
        {"customers.csv",
         "SELECT name, phone, note FROM customer WHERE id NOT IN (SELECT customer_id FROM "
         "forgotten_customer) "
         "AND id NOT IN (SELECT id FROM customer_joined) ORDER BY name COLLATE NOCASE, id",
         kCustomers},
        {"orders.csv",
         "SELECT shop_order.number, customer.name, customer.phone, shop_order.state, taken_at, "
         "taken_at_place, "
         "shop_order.promised, handed_over_at, garments, total_minor, paid_minor, shop_order.note, tax_kind, "
         "tax_rate / 100.0, taxed_by, tax_rounding, valid_until FROM shop_order "
         "JOIN customer ON customer.id = customer_id JOIN order_card ON order_card.id = shop_order.id "
         "ORDER BY shop_order.number",
         kOrders},
        {"garments.csv",
         "SELECT number, garment.position, blank_style.name, size, style_colour.name, price_minor, attempt, "
         "lot_id IS NOT NULL, garment.handed_over_at, garment.cancelled_at FROM garment JOIN shop_order ON "
         "shop_order.id = "
         "order_id "
         "JOIN blank_style ON blank_style.id = garment.style_id JOIN style_colour ON style_colour.id = "
         "colour_id "
         "ORDER BY number, garment.position",
         kGarments},
        {"decals.csv",
         "SELECT shop_order.number, garment.position, finish, shade, artwork, wording, face, placement, "
         "below_mm, aside_mm, "
         "decal.width_mm, height_mm, layer, confirmed_by, film_roll.number, cut_at FROM decal "
         "JOIN garment ON garment.id = garment_id JOIN shop_order ON shop_order.id = order_id "
         "JOIN film ON film.id = decal.film_id LEFT JOIN film_roll ON film_roll.id = cut_roll_id "
         "ORDER BY shop_order.number, garment.position, layer, decal.id",
         kDecals},
        {"bill-lines.csv",
         "SELECT shop_order.number, bill_line.kind, words, bill_line_amount.minor, bill_line.share / 100.0 "
         "FROM bill_line JOIN bill_line_amount ON bill_line_amount.id = bill_line.id "
         "JOIN shop_order ON shop_order.id = bill_line.order_id ORDER BY shop_order.number, bill_line.id",
         kBillLines},
        {"invoices.csv",
         "SELECT invoice.series || '-' || invoice.number, invoice.kind, invoice.order_number, "
         "corrected.series || '-' || corrected.number, invoice.reason, invoice.made_on, "
         "invoice.handed_over_on, invoice.shop_name, invoice.shop_address, invoice.tax_number, "
         "invoice.shop_lines, invoice.customer_name, invoice.customer_address, invoice.currency_code, "
         "invoice.tax_kind, invoice.tax_rate / 100.0, invoice.taxed_by, invoice.tax_rounding, "
         "invoice.tax_name, invoice.tax_minor, invoice.total_minor, invoice.paid_minor FROM invoice "
         "LEFT JOIN invoice AS corrected ON corrected.id = invoice.corrects_id "
         "ORDER BY invoice.series, invoice.number",
         kInvoices},
        {"invoice-rows.csv",
         "SELECT series || '-' || number, words, minor FROM invoice_row "
         "JOIN invoice ON invoice.id = invoice_id ORDER BY series, number, invoice_row.id",
         kInvoiceRows},
        {"money.csv",
         "SELECT number, at, minor, kind, how FROM money_move JOIN shop_order ON shop_order.id = order_id "
         "ORDER BY at, money_move.id",
         kMoney},
        {"order-references.csv",
         "SELECT number, shop, reference FROM order_reference JOIN shop_order ON shop_order.id = order_id "
         "ORDER BY number, order_reference.id",
         kReferences},
        {"order-file-columns.csv",
         "SELECT shop, headings, meaning, heading FROM order_file_column JOIN order_file ON order_file.id = "
         "file_id WHERE file_id IN (SELECT MAX(id) FROM order_file GROUP BY headings) "
         "ORDER BY shop, file_id, order_file_column.id",
         kFileColumns},
        {"order-file-items.csv",
         "SELECT shop, headings, item, number, garment.position FROM order_file_item "
         "JOIN order_file ON order_file.id = file_id JOIN garment ON garment.id = like_id "
         "JOIN shop_order ON shop_order.id = order_id "
         "WHERE file_id IN (SELECT MAX(id) FROM order_file GROUP BY headings) "
         "ORDER BY shop, file_id, order_file_item.id",
         kFileItems},
        {"blank-styles.csv",
         "SELECT name, outline, weight_g, cost_minor, "
         "(SELECT group_concat(word, ' | ') FROM (SELECT " BARRED(
             "size") " AS word FROM style_size "
                     "WHERE style_id = blank_style.id ORDER BY COALESCE(rank, position), position)), "
                     "(SELECT group_concat(word, ' | ') FROM (SELECT " BARRED(
                         "style_colour.name") " || ' #' || printf('%06X', rgb) || "
                                              "CASE WHEN retired_at IS NULL THEN '' ELSE ' retired' END "
                                              "AS word FROM style_colour WHERE style_id = blank_style.id "
                                              "ORDER BY position)), "
                                              "(SELECT group_concat(word, ' | ') FROM (SELECT obstacle || "
                                              "COALESCE(': ' || way, '') AS word FROM style_obstacle "
                                              "WHERE style_id = blank_style.id ORDER BY obstacle)), "
                                              "not_prewashed_because, for_child, sleepwear, has_cords, "
                                              "law_checked_by, label_read_on, "
                                              "(SELECT group_concat(word, ' | ') FROM (SELECT percent || ' ' "
                                              "|| fibre AS word FROM style_fibre "
                                              "WHERE style_id = blank_style.id ORDER BY percent DESC, "
                                              "fibre)), "
                                              "stretch, coating, highest_safe_c, care_wash_c, "
                                              "care_agitation, care_tumble, care_iron_c, care_bleach, "
                                              "substr('P', 1, (care_cleaning & 1) > 0) || substr('F', 1, "
                                              "(care_cleaning & 2) > 0) || "
                                              "substr('W', 1, (care_cleaning & 4) > 0), retired_at IS NOT "
                                              "NULL, supplier FROM blank_style "
                                              "ORDER BY name COLLATE NOCASE",
         kStyles},
        {"blank-lots.csv",
         "SELECT blank_style.name, size, style_colour.name, units, received_on, "
         "(SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_id = blank_lot.id AND units > 0), "
         "wash_load.started_at, wash_load.dry_at, length_before_mm, length_after_mm, width_before_mm, "
         "width_after_mm, detergent, softener, water_c, drying, dryer_sheet "
         "FROM blank_lot JOIN lot_units ON lot_units.lot_id = blank_lot.id "
         "JOIN blank_style ON blank_style.id = blank_lot.style_id JOIN style_colour ON style_colour.id = "
         "colour_id "
         "LEFT JOIN wash_load ON wash_load.id = last_load_id ORDER BY received_on, blank_lot.id",
         kLots},
        {"blank-moves.csv",
         "SELECT blank_style.name, blank_lot.size, style_colour.name, received_on, at, units, reason, "
         "number, "
         "garment.position FROM lot_move JOIN blank_lot ON blank_lot.id = lot_move.lot_id "
         "JOIN blank_style ON blank_style.id = blank_lot.style_id JOIN style_colour ON style_colour.id = "
         "blank_lot.colour_id "
         "LEFT JOIN garment ON garment.id = garment_id LEFT JOIN shop_order ON shop_order.id = order_id "
         "ORDER BY at, lot_move.id",
         kLotMoves},
        {"wash-loads.csv",
         "SELECT started_at, detergent, softener, water_c, drying, dryer_sheet, dry_at, "
         "(SELECT SUM(units) FROM lot_move JOIN blank_lot ON blank_lot.id = lot_id WHERE last_load_id = "
         "wash_load.id "
         "AND units > 0) FROM wash_load ORDER BY started_at, id",
         kLoads},
        {"films.csv",
         "SELECT finish, shade, rgb, recipe_c, CASE WHEN recipe_c IS NOT NULL THEN dwell_s END, "
         "CASE WHEN recipe_c IS NOT NULL THEN pressure END, CASE WHEN recipe_c IS NOT NULL THEN peel END, "
         "CASE WHEN recipe_c IS NOT NULL THEN preheat_s END, CASE WHEN recipe_c IS NOT NULL THEN cool_s END, "
         "CASE WHEN recipe_c IS NOT NULL THEN finish_front_s END, CASE WHEN recipe_c IS NOT NULL THEN "
         "finish_back_s END, "
         "CASE WHEN recipe_c IS NOT NULL THEN tack_s END, recipe_confirmed_by, follows, grips_coated, "
         "(SELECT group_concat(fibre, ' | ') FROM (SELECT fibre FROM film_not_for WHERE film_id = film.id "
         "ORDER BY fibre)), "
         "care_wash_c, care_agitation, care_tumble, care_iron_c, care_bleach, "
         "substr('P', 1, (care_cleaning & 1) > 0) || substr('F', 1, (care_cleaning & 2) > 0) || "
         "substr('W', 1, (care_cleaning & 4) > 0), "
         "shelf_life_days, humidity_low, humidity_high, store_low_c, store_high_c, allowed_outside_h, q10, "
         "reference_c, "
         "strip_extends_days, may_lie_under, may_lie_over, has_grain, roll_width_mm, cost_per_metre, "
         "retired_at IS NOT NULL, supplier FROM film ORDER BY finish COLLATE NOCASE, shade COLLATE NOCASE",
         kFilms},
        {"rolls.csv",
         "SELECT number, finish, shade, width_mm, mm, received_on, made_on, printed_use_by, "
         "(SELECT storage_place.name FROM roll_stay JOIN storage_place ON storage_place.id = place_id "
         "WHERE roll_id = film_roll.id ORDER BY since DESC, roll_stay.id DESC LIMIT 1), state, "
         "(SELECT SUM(mm) FROM roll_move WHERE roll_move.roll_id = film_roll.id AND kind = 'received') "
         "FROM film_roll JOIN film ON film.id = film_id JOIN roll_length ON roll_length.roll_id = "
         "film_roll.id "
         "ORDER BY number",
         kRolls},
        {"roll-moves.csv",
         "SELECT number, at, mm, kind, reason FROM roll_move JOIN film_roll ON film_roll.id = roll_id "
         "ORDER BY at, roll_move.id",
         kRollMoves},
        {"test-strips.csv",
         "SELECT number, at, passed, extends_days, note FROM test_strip JOIN film_roll ON film_roll.id = "
         "roll_id "
         "ORDER BY at, test_strip.id",
         kStrips},
        {"places.csv", "SELECT name, retired_at IS NOT NULL FROM storage_place ORDER BY name COLLATE NOCASE",
         kPlaces},
        {"readings.csv",
         "SELECT name, at, celsius, humidity FROM storage_place JOIN climate_reading ON place_id = "
         "storage_place.id "
         "ORDER BY storage_place.id, at",
         kReadings},
        {"presses.csv",
         "SELECT name, platen_width_mm, platen_height_mm, has_small_platen, heats_per_minute, "
         "cools_per_minute, "
         "tolerance_c, even_within_c, check_every_days, retired_at IS NOT NULL FROM press ORDER BY name "
         "COLLATE NOCASE",
         kPresses},
        {"press-checks.csv",
         "SELECT name, at, set_c, by_whom, (SELECT group_concat(celsius, ' | ') FROM (SELECT celsius "
         "FROM press_check_reading WHERE check_id = press_check.id ORDER BY spot)) "
         "FROM press_check JOIN press ON press.id = press_id ORDER BY at, press_check.id",
         kChecks},
        {"claims.csv",
         "SELECT number, garment.position, COALESCE(artwork, wording), told_on, fault, washes, claim.note, "
         "answer, "
         "answered_on FROM claim JOIN garment ON garment.id = claim.garment_id JOIN shop_order ON "
         "shop_order.id = order_id "
         "LEFT JOIN decal ON decal.id = decal_id ORDER BY told_on, claim.id",
         kClaims},
        {"fairs.csv",
         "SELECT name, first_day, last_day, printf('%02d:%02d', opens_min / 60, opens_min % 60), "
         "printf('%02d:%02d', closes_min / 60, closes_min % 60), stall_minor, other_minor, worked_min, note "
         "FROM fair "
         "ORDER BY first_day, name",
         kFairs},
        {"settings.csv",
         "SELECT name, value FROM setting UNION ALL SELECT 'closed-day', day FROM closed_day UNION ALL "
         "SELECT 'other-hours', day || ' ' || opens || '-' || closes FROM other_hours UNION ALL "
         "SELECT 'style-price', minor || ' ' || blank_style.name FROM style_price "
         "JOIN blank_style ON blank_style.id = style_id UNION ALL "
         "SELECT 'decal-price', minor || ' ' || up_to_mm FROM decal_price ORDER BY 1, 2",
         kSettings},
        {"till-counts.csv",
         "SELECT day, at, float_minor, cash_minor, counted_minor, counted_minor - float_minor - cash_minor "
         "FROM till_count ORDER BY day, at, id",
         kTillCounts},
        {"history.csv",
         "SELECT at, seat.name, title, undone_by IS NOT NULL FROM journal_entry JOIN seat ON seat.id = "
         "seat_id "
         "ORDER BY journal_entry.id",
         kHistory},
    };
};

#undef BARRED

} // namespace

std::span<const ExportTable> exportTables() {
    return TablesOfTheTrade::kExportTables;
}

} // namespace holdfast::db
