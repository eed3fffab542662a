// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/codes.h"

#include "core/quality/claim.h"
#include "db/sqlite/failure.h"

#include <sqlite3.h>

#include <span>
#include <string>
#include <utility>

namespace holdfast::db {

namespace {

template <class Choice>
using CodeList = std::span<const std::pair<Choice, std::string_view>>;

// The words of each kind of choice; they stand in shop files and never change.
CodeList<Stretch> codes(Stretch) {
    static constexpr std::pair<Stretch, std::string_view> list[] = {
        {Stretch::None, "none"}, {Stretch::Some, "some"}, {Stretch::High, "high"}};
    return list;
}
CodeList<Coating> codes(Coating) {
    static constexpr std::pair<Coating, std::string_view> list[] = {
        {Coating::None, "none"}, {Coating::WaterRepellent, "water-repellent"}, {Coating::Waxed, "waxed"}};
    return list;
}
CodeList<Fibre> codes(Fibre) {
    static constexpr std::pair<Fibre, std::string_view> list[] = {
        {Fibre::Cotton, "cotton"},       {Fibre::Linen, "linen"},     {Fibre::Viscose, "viscose"},
        {Fibre::Wool, "wool"},           {Fibre::Silk, "silk"},       {Fibre::Polyester, "polyester"},
        {Fibre::Polyamide, "polyamide"}, {Fibre::Acrylic, "acrylic"}, {Fibre::Elastane, "elastane"},
        {Fibre::Other, "other"}};
    return list;
}
CodeList<Obstacle> codes(Obstacle) {
    static constexpr std::pair<Obstacle, std::string_view> list[] = {{Obstacle::Zip, "zip"},
                                                                     {Obstacle::Buttons, "buttons"},
                                                                     {Obstacle::Seams, "seams"},
                                                                     {Obstacle::ThickHem, "thick-hem"}};
    return list;
}
CodeList<WayRound> codes(WayRound) {
    static constexpr std::pair<WayRound, std::string_view> list[] = {
        {WayRound::Pillow, "pillow"}, {WayRound::Turn, "turn"}, {WayRound::SmallPlaten, "small-platen"}};
    return list;
}
CodeList<Drying> codes(Drying) {
    static constexpr std::pair<Drying, std::string_view> list[] = {
        {Drying::Line, "line"}, {Drying::TumbleLow, "tumble-low"}, {Drying::Tumble, "tumble"}};
    return list;
}
CodeList<Agitation> codes(Agitation) {
    static constexpr std::pair<Agitation, std::string_view> list[] = {{Agitation::ByHand, "by-hand"},
                                                                      {Agitation::VeryMild, "very-mild"},
                                                                      {Agitation::Mild, "mild"},
                                                                      {Agitation::Normal, "normal"}};
    return list;
}
CodeList<Tumble> codes(Tumble) {
    static constexpr std::pair<Tumble, std::string_view> list[] = {
        {Tumble::No, "no"}, {Tumble::Low, "low"}, {Tumble::Normal, "normal"}};
    return list;
}
CodeList<Bleach> codes(Bleach) {
    static constexpr std::pair<Bleach, std::string_view> list[] = {
        {Bleach::No, "no"}, {Bleach::OxygenOnly, "oxygen-only"}, {Bleach::Any, "any"}};
    return list;
}
CodeList<Pressure> codes(Pressure) {
    static constexpr std::pair<Pressure, std::string_view> list[] = {
        {Pressure::Light, "light"}, {Pressure::Medium, "medium"}, {Pressure::Firm, "firm"}};
    return list;
}
CodeList<Peel> codes(Peel) {
    static constexpr std::pair<Peel, std::string_view> list[] = {
        {Peel::Hot, "hot"}, {Peel::Warm, "warm"}, {Peel::Cool, "cool"}};
    return list;
}
CodeList<RollState> codes(RollState) {
    static constexpr std::pair<RollState, std::string_view> list[] = {
        {RollState::OnShelf, "on-shelf"}, {RollState::PutAway, "put-away"}, {RollState::UsedUp, "used-up"}};
    return list;
}
CodeList<OrderState> codes(OrderState) {
    static constexpr std::pair<OrderState, std::string_view> list[] = {
        {OrderState::Quoted, "quoted"},
        {OrderState::Confirmed, "confirmed"},
        {OrderState::HandedOver, "handed-over"},
        {OrderState::Cancelled, "cancelled"}};
    return list;
}
CodeList<Placement> codes(Placement) {
    static constexpr std::pair<Placement, std::string_view> list[] = {{Placement::Chest, "chest"},
                                                                      {Placement::LeftChest, "left-chest"},
                                                                      {Placement::Front, "front"},
                                                                      {Placement::Back, "back"},
                                                                      {Placement::Sleeve, "sleeve"}};
    return list;
}
CodeList<Face> codes(Face) {
    static constexpr std::pair<Face, std::string_view> list[] = {{Face::BookSerif, "book-serif"},
                                                                 {Face::Plain, "plain"}};
    return list;
}
CodeList<MoneyKind> codes(MoneyKind) {
    static constexpr std::pair<MoneyKind, std::string_view> list[] = {
        {MoneyKind::Deposit, "deposit"}, {MoneyKind::Payment, "payment"}, {MoneyKind::Refund, "refund"}};
    return list;
}
CodeList<PaidHow> codes(PaidHow) {
    static constexpr std::pair<PaidHow, std::string_view> list[] = {
        {PaidHow::Cash, "cash"}, {PaidHow::Card, "card"}, {PaidHow::Transfer, "transfer"}};
    return list;
}
CodeList<Fault> codes(Fault) {
    static constexpr std::pair<Fault, std::string_view> list[] = {{Fault::EdgeLifts, "edge-lifts"},
                                                                  {Fault::CameOff, "came-off"},
                                                                  {Fault::Cracked, "cracked"},
                                                                  {Fault::Bubbled, "bubbled"},
                                                                  {Fault::Faded, "faded"},
                                                                  {Fault::Scorched, "scorched"},
                                                                  {Fault::BlankGaveWay, "blank-gave-way"},
                                                                  {Fault::NotAsOrdered, "not-as-ordered"},
                                                                  {Fault::Other, "other"}};
    return list;
}
CodeList<ClaimAnswer> codes(ClaimAnswer) {
    static constexpr std::pair<ClaimAnswer, std::string_view> list[] = {
        {ClaimAnswer::PressedAgain, "pressed-again"},
        {ClaimAnswer::MadeAgain, "made-again"},
        {ClaimAnswer::MoneyBack, "money-back"},
        {ClaimAnswer::Advised, "advised"},
        {ClaimAnswer::NotOurs, "not-ours"}};
    return list;
}

} // namespace

template <class Choice>
std::string_view codeOf(Choice choice) {
    for (const auto& [each, code] : codes(choice))
        if (each == choice)
            return code;
    throw SqliteFailure(SQLITE_MISUSE, "A choice without a word was to be written.");
}

template <class Choice>
std::optional<Choice> knownCode(std::string_view code) {
    for (const auto& [each, word] : codes(Choice{}))
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
HOLDFAST_CODES(Fault)
HOLDFAST_CODES(ClaimAnswer)
#undef HOLDFAST_CODES

} // namespace holdfast::db
