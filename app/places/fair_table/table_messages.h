#pragma once
// What is said at once of the draft: what fits, what cannot be kept and why, what to look out for. Holds
// first, then cautions, then what is in order.

#include "app/desk/shop_desk.h"
#include "app/places/fair_table/draft_words.h"
#include "app/places/fair_table/table_draft.h"
#include "app/places/fair_table/table_sums.h"
#include "app/theme/tokens.h"

#include <QString>

#include <optional>
#include <vector>

namespace holdfast::app {

struct TableMessage {
    Tone tone = Tone::Plain;
    QString lead;
    QString text;
    QString iconName;
    std::optional<FreeingAct> act; // offered as a button, about `matter`
    Matter matter;
    // Of what stands in the way: why no day can be told before it is put right; or, where the promise takes
    // the time for it, what its day waits for.
    QString leavesDayOpen{};
    QString dayWaitsFor{};
};

// The first that any of them says about the day, leavesDayOpen or dayWaitsFor; empty: none does.
QString firstSaid(const std::vector<TableMessage>& messages, QString TableMessage::*kind);

std::vector<TableMessage> messagesFor(const TableDraft& draft, const TableSums& sums,
                                      const ReckonedShop& shop, const BlankRailStock& stock);

// How wide the thinnest strokes of cut words are: 0.12 of the letter height for the serif face, 0.15 for the
// plain one. The letter height is that of capitals, judged from the decal's height by which letters reach
// above and below the line. An estimate from the program's own two faces; below kThinnestStroke film tears
// when it is weeded (common practice, no source).
double strokeEstimate(const Wording& wording, Millimetres height); // mm
inline constexpr double kThinnestStroke = 2.0;

} // namespace holdfast::app
