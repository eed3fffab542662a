// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/order_lettering.h"

#include "app/theme/wording_outline.h"
#include "core/trade/limits.h"

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr std::size_t kMostLetters = 60; // as checkDraft has it

} // namespace

Result<DecalDraft> lettered(const DecalDraft& like, const GarmentDraft&, const std::string& wording) {
    // Before it is drawn: a page of text would take long, only to be refused.
    const auto typed =
        typedText(wording, {.field = "wording", .what = phrase("The wording"), .most = kMostLetters});
    if (!typed.ok())
        return typed.error();
    DecalDraft decal = like;
    Wording worded{*typed, std::get<Wording>(like.content).face, {}};
    const QString missing = lettersWithoutShape(QString::fromStdString(worded.text), worded.face);
    if (!missing.isEmpty())
        return plainError(
            said("there is no shape to cut for {letters}.", {{"letters", missing.toStdString()}}));
    const double aspect = wordingAspect(worded);
    if (!std::isfinite(aspect) || aspect <= 0)
        return plainError(said("there is nothing to cut in “{wording}”.", {{"wording", worded.text}}));
    worded.outline = outlineToKeep(worded);
    const auto width = static_cast<double>(like.width.value);
    const auto height = static_cast<double>(like.height.value);
    const double fitted = std::min(height, width / aspect);
    decal.height = {static_cast<std::int64_t>(std::lround(fitted))};
    decal.width = {static_cast<std::int64_t>(std::lround(fitted * aspect))};
    decal.content = std::move(worded);
    return decal;
}

} // namespace holdfast::app
