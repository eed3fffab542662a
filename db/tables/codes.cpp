// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/codes.h"

#include "core/quality/claim.h"
#include "core/trade/enumerators.h"
#include "db/sqlite/failure.h"

#include <sqlite3.h>

#include <array>
#include <cstddef>
#include <string>
#include <utility>

namespace holdfast::db {

namespace {

template <class Choice>
using Code = std::pair<Choice, std::string_view>;
template <class Choice>
constexpr std::nullptr_t kCodes = nullptr;

// The words of each kind of choice; they stand in shop files and never change.
template <>
constexpr auto kCodes<Stretch> =
    std::to_array<Code<Stretch>>({{Stretch::None, "none"}, {Stretch::Some, "some"}, {Stretch::High, "high"}});
template <>
constexpr auto kCodes<Coating> = std::to_array<Code<Coating>>(
    {{Coating::None, "none"}, {Coating::WaterRepellent, "water-repellent"}, {Coating::Waxed, "waxed"}});
template <>
constexpr auto kCodes<Fibre> = std::to_array<Code<Fibre>>({{Fibre::Cotton, "cotton"},
                                                           {Fibre::Linen, "linen"},
                                                           {Fibre::Viscose, "viscose"},
                                                           {Fibre::Wool, "wool"},
                                                           {Fibre::Silk, "silk"},
                                                           {Fibre::Polyester, "polyester"},
                                                           {Fibre::Polyamide, "polyamide"},
                                                           {Fibre::Acrylic, "acrylic"},
                                                           {Fibre::Elastane, "elastane"},
                                                           {Fibre::Other, "other"}});
template <>
constexpr auto kCodes<Obstacle> = std::to_array<Code<Obstacle>>({{Obstacle::Zip, "zip"},
                                                                 {Obstacle::Buttons, "buttons"},
                                                                 {Obstacle::Seams, "seams"},
                                                                 {Obstacle::ThickHem, "thick-hem"}});
template <>
constexpr auto kCodes<WayRound> = std::to_array<Code<WayRound>>(
    {{WayRound::Pillow, "pillow"}, {WayRound::Turn, "turn"}, {WayRound::SmallPlaten, "small-platen"}});
template <>
constexpr auto kCodes<Drying> = std::to_array<Code<Drying>>(
    {{Drying::Line, "line"}, {Drying::TumbleLow, "tumble-low"}, {Drying::Tumble, "tumble"}});
template <>
constexpr auto kCodes<Agitation> = std::to_array<Code<Agitation>>({{Agitation::ByHand, "by-hand"},
                                                                   {Agitation::VeryMild, "very-mild"},
                                                                   {Agitation::Mild, "mild"},
                                                                   {Agitation::Normal, "normal"}});
template <>
constexpr auto kCodes<Tumble> =
    std::to_array<Code<Tumble>>({{Tumble::No, "no"}, {Tumble::Low, "low"}, {Tumble::Normal, "normal"}});
template <>
constexpr auto kCodes<Bleach> = std::to_array<Code<Bleach>>(
    {{Bleach::No, "no"}, {Bleach::OxygenOnly, "oxygen-only"}, {Bleach::Any, "any"}});
template <>
constexpr auto kCodes<Pressure> = std::to_array<Code<Pressure>>(
    {{Pressure::Light, "light"}, {Pressure::Medium, "medium"}, {Pressure::Firm, "firm"}});
template <>
constexpr auto kCodes<Peel> =
    std::to_array<Code<Peel>>({{Peel::Hot, "hot"}, {Peel::Warm, "warm"}, {Peel::Cool, "cool"}});
template <>
constexpr auto kCodes<RollState> = std::to_array<Code<RollState>>(
    {{RollState::OnShelf, "on-shelf"}, {RollState::PutAway, "put-away"}, {RollState::UsedUp, "used-up"}});
template <>
constexpr auto kCodes<OrderState> = std::to_array<Code<OrderState>>({{OrderState::Quoted, "quoted"},
                                                                     {OrderState::Confirmed, "confirmed"},
                                                                     {OrderState::HandedOver, "handed-over"},
                                                                     {OrderState::Cancelled, "cancelled"}});
template <>
constexpr auto kCodes<Placement> = std::to_array<Code<Placement>>({{Placement::Chest, "chest"},
                                                                   {Placement::LeftChest, "left-chest"},
                                                                   {Placement::Front, "front"},
                                                                   {Placement::Back, "back"},
                                                                   {Placement::Sleeve, "sleeve"}});
template <>
constexpr auto kCodes<Face> =
    std::to_array<Code<Face>>({{Face::BookSerif, "book-serif"}, {Face::Plain, "plain"}});
template <>
constexpr auto kCodes<MoneyKind> = std::to_array<Code<MoneyKind>>(
    {{MoneyKind::Deposit, "deposit"}, {MoneyKind::Payment, "payment"}, {MoneyKind::Refund, "refund"}});
template <>
constexpr auto kCodes<OrderColumn> = std::to_array<Code<OrderColumn>>({{OrderColumn::Reference, "reference"},
                                                                       {OrderColumn::Customer, "customer"},
                                                                       {OrderColumn::Phone, "phone"},
                                                                       {OrderColumn::Item, "item"},
                                                                       {OrderColumn::Size, "size"},
                                                                       {OrderColumn::Colour, "colour"},
                                                                       {OrderColumn::Copies, "copies"},
                                                                       {OrderColumn::Wording, "wording"},
                                                                       {OrderColumn::Price, "price"},
                                                                       {OrderColumn::Paid, "paid"},
                                                                       {OrderColumn::Wanted, "wanted"},
                                                                       {OrderColumn::Note, "note"}});
template <>
constexpr auto kCodes<PaidHow> = std::to_array<Code<PaidHow>>(
    {{PaidHow::Cash, "cash"}, {PaidHow::Card, "card"}, {PaidHow::Transfer, "transfer"}});
template <>
constexpr auto kCodes<BillLineKind> = std::to_array<Code<BillLineKind>>({{BillLineKind::Extra, "extra"},
                                                                         {BillLineKind::Discount, "discount"},
                                                                         {BillLineKind::ForMany, "for-many"},
                                                                         {BillLineKind::Rush, "rush"}});
template <>
constexpr auto kCodes<InvoiceKind> = std::to_array<Code<InvoiceKind>>(
    {{InvoiceKind::Invoice, "invoice"}, {InvoiceKind::CreditNote, "credit-note"}});
template <>
constexpr auto kCodes<TaxKind> = std::to_array<Code<TaxKind>>(
    {{TaxKind::None, "none"}, {TaxKind::Included, "included"}, {TaxKind::Added, "added"}});
template <>
constexpr auto kCodes<TaxedBy> =
    std::to_array<Code<TaxedBy>>({{TaxedBy::Line, "line"}, {TaxedBy::Total, "total"}});
template <>
constexpr auto kCodes<Rounding> =
    std::to_array<Code<Rounding>>({{Rounding::HalfUp, "half-up"}, {Rounding::HalfEven, "half-even"}});
template <>
constexpr auto kCodes<PricedBy> = std::to_array<Code<PricedBy>>(
    {{PricedBy::Margin, "margin"}, {PricedBy::MarkUp, "mark-up"}, {PricedBy::List, "list"}});
template <>
constexpr auto kCodes<Fault> = std::to_array<Code<Fault>>({{Fault::EdgeLifts, "edge-lifts"},
                                                           {Fault::CameOff, "came-off"},
                                                           {Fault::Cracked, "cracked"},
                                                           {Fault::Bubbled, "bubbled"},
                                                           {Fault::Faded, "faded"},
                                                           {Fault::Scorched, "scorched"},
                                                           {Fault::BlankGaveWay, "blank-gave-way"},
                                                           {Fault::NotAsOrdered, "not-as-ordered"},
                                                           {Fault::Other, "other"}});
template <>
constexpr auto kCodes<ClaimAnswer> =
    std::to_array<Code<ClaimAnswer>>({{ClaimAnswer::PressedAgain, "pressed-again"},
                                      {ClaimAnswer::MadeAgain, "made-again"},
                                      {ClaimAnswer::MoneyBack, "money-back"},
                                      {ClaimAnswer::Advised, "advised"},
                                      {ClaimAnswer::NotOurs, "not-ours"}});

} // namespace

template <class Choice>
std::string_view codeOf(Choice choice) {
    static_assert(hasEach<Choice>(kCodes<Choice>, &Code<Choice>::first));
    for (const auto& [each, code] : kCodes<Choice>)
        if (each == choice)
            return code;
    throw SqliteFailure(SQLITE_MISUSE, "A choice was to be written that there is not.");
}

template <class Choice>
std::optional<Choice> knownCode(std::string_view code) {
    for (const auto& [each, word] : kCodes<Choice>)
        if (word == code)
            return each;
    return std::nullopt;
}

template <class Choice>
Choice fromCode(std::string_view code) {
    if (const auto known = knownCode<Choice>(code))
        return *known;
    throw SqliteFailure(SQLITE_CORRUPT, "The shop file has the word “" + std::string(code) +
                                            "”, which this version does not know.");
}

#define HOLDFAST_CODES(Choice)                                                                               \
    template std::string_view codeOf<Choice>(Choice);                                                        \
    template std::optional<Choice> knownCode<Choice>(std::string_view);                                      \
    template Choice fromCode<Choice>(std::string_view);
HOLDFAST_CODES(Stretch)
HOLDFAST_CODES(Coating)
HOLDFAST_CODES(Fibre)
HOLDFAST_CODES(Obstacle)
HOLDFAST_CODES(WayRound)
HOLDFAST_CODES(Drying)
HOLDFAST_CODES(Agitation)
HOLDFAST_CODES(Tumble)
HOLDFAST_CODES(Bleach)
HOLDFAST_CODES(Pressure)
HOLDFAST_CODES(Peel)
HOLDFAST_CODES(RollState)
HOLDFAST_CODES(OrderState)
HOLDFAST_CODES(Placement)
HOLDFAST_CODES(Face)
HOLDFAST_CODES(MoneyKind)
HOLDFAST_CODES(PaidHow)
HOLDFAST_CODES(OrderColumn)
HOLDFAST_CODES(BillLineKind)
HOLDFAST_CODES(InvoiceKind)
HOLDFAST_CODES(TaxKind)
HOLDFAST_CODES(TaxedBy)
HOLDFAST_CODES(Rounding)
HOLDFAST_CODES(PricedBy)
HOLDFAST_CODES(Fault)
HOLDFAST_CODES(ClaimAnswer)
#undef HOLDFAST_CODES

} // namespace holdfast::db
