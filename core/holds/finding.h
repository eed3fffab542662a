#pragma once
// What a rule has to say of a garment: a hold stops the work, a caution does not, a step added changes its
// route. Derived each time from the facts, never stored. Each says what, why (with its numbers) and what
// frees it. A waiver is stored, with a reason, and shows for ever in the garment's history.

#include "core/trade/dates.h"
#include "core/trade/ids.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

enum class Rule {
    BlankUnwashed,
    BlankDamp,
    SoftenerLeft,
    LabelUnread,
    FilmUnfitStretch,
    FilmUnfitCoating,
    FilmUnfitHeat,
    FilmUnfitFibre,
    BlankOutOfStock,
    BlankShrank,
    NoRollFits,
    RollPastAge,
    RollBadlyKept,
    StripFailed,
    RollUnplaced,
    ReadingsStale,
    RecipeMissing,
    RecipeUnconfirmed,
    PressCheckOverdue,
    PressOff,
    PressUneven,
    NoPress,
    ObstacleUnsolved,
    ObstacleSolved,
    DecalBeyondPlaten,
    LayersNotAllowed,
    FilmsDisagree,
    WordingUnconfirmed,
    DepositShort,
    LocalLaw,
    DecalOffCloth,
    LetteringTooSmall,
};

enum class Grade { Hold, Caution, StepAdded };

// What a person can do about a finding; the app offers it one key away.
enum class FreeingAct {
    WashBlank,
    MarkDry,
    MarkNotPrewashed,
    ReadLabel,
    ChooseFilm,
    ChooseBlank,
    ReceiveBlanks,
    ReceiveRoll,
    TestStrip,
    MoveRoll,
    RecordReading,
    EnterRecipe,
    ConfirmRecipe,
    CheckPress,
    AddPress,
    ChooseWayRound,
    ReorderLayers,
    ConfirmWording,
    TakePayment,
    NoteLawChecked,
};

struct Finding {
    Rule rule = Rule::BlankUnwashed;
    Grade grade = Grade::Hold;
    std::string what;              // "Unwashed"
    std::string why;               // "Lot of 12 Oct, M, Moss: no wash load on record."
    std::vector<FreeingAct> frees; // the likeliest first
    std::optional<DecalId> decal;
    std::optional<FilmId> film;
    std::optional<RollId> roll;
    std::optional<BlankLotId> lot;
    std::optional<BlankStyleId> style;
    std::optional<PlaceId> place;
    std::optional<PressId> press;
    bool isWaived = false;

    bool holds() const { return grade == Grade::Hold && !isWaived; }
};

struct Waiver {
    GarmentId garment;
    int attempt = 1;
    Rule rule = Rule::BlankUnwashed;
    std::string reason;
    Instant at;
};

// "blank-unwashed": how a rule is written in the shop file and in reports; stable.
std::string_view ruleCode(Rule rule);
std::optional<Rule> ruleFromCode(std::string_view code);

// "Put in wash", "Press a test strip": words for the button that frees.
std::string freeingWords(FreeingAct act);

} // namespace holdfast
