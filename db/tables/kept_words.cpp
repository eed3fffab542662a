// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/kept_words.h"

#include "core/trade/kept_sentence.h"

namespace holdfast::db {

KeptWords KeptWords::of(const Sentence& sentence) {
    return {sentence.english(), keptForm(sentence)};
}

Sentence KeptWords::sentence() const {
    if (auto kept = said.empty() ? std::nullopt : sentenceKept(said); kept && *kept == english)
        return std::move(*kept);
    return english.empty() ? Sentence{} : asItIs(english);
}

std::optional<std::string> KeptWords::saidOrNull() const {
    return said.empty() ? std::nullopt : std::optional{said};
}

KeptWords keptWords(const Query& row, int english, int said) {
    return {row.text(english), row.isNull(said) ? std::string{} : row.text(said)};
}

} // namespace holdfast::db
