// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/sentence.h"

#include "core/trade/assertion.h"
#include "core/trade/language.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <ostream>

namespace holdfast {

namespace {

std::string written(const Sentence& sentence, const Language& language, bool begins);

std::string written(const Parts& parts, const Language& language, bool begins) {
    std::string text;
    for (const Sentence& part : parts.sentences()) {
        if (!text.empty())
            text += language.betweenParts();
        text += written(part, language, begins && text.empty());
    }
    return text;
}

// A part that begins a text begins with a capital; a name stays as its owner writes it.
std::string written(const Value& value, const Language& language, bool begins) {
    const auto* parts = std::get_if<Parts>(&value.held());
    if (parts == nullptr)
        return language.written(value);
    if (parts->beginning() == Beginning::Small)
        return language.withinLine(written(*parts, language, false));
    if (parts->beginning() == Beginning::AsAlone)
        return written(*parts, language, true);
    std::string text = written(*parts, language, begins);
    const bool isAName = !parts->sentences().empty() && parts->sentences().front().isAsItIs();
    return begins && !isAName ? withCapital(std::move(text)) : text;
}

const Value* valueNamed(const std::vector<NamedValue>& values, std::string_view name) {
    const auto found = std::ranges::find(values, name, &NamedValue::name);
    return found == values.end() ? nullptr : &found->value;
}

// A place without a value is left as it is written, so that a translator's slip shows and nothing is lost.
std::string filled(std::string_view pattern, const std::vector<NamedValue>& values, const Language& language,
                   bool begins) {
    std::string text;
    std::size_t at = 0;
    while (at < pattern.size()) {
        const auto open = pattern.find('{', at);
        const auto close = open == std::string_view::npos ? open : pattern.find('}', open);
        if (close == std::string_view::npos)
            break;
        text += pattern.substr(at, open - at);
        if (const Value* value = valueNamed(values, pattern.substr(open + 1, close - open - 1)))
            text += written(*value, language, text.empty() ? begins : text.ends_with(". "));
        else
            text += pattern.substr(open, close + 1 - open);
        at = close + 1;
    }
    return text.append(pattern.substr(std::min(at, pattern.size())));
}

std::optional<std::int64_t> countOf(const std::vector<NamedValue>& values) {
    const Value* value = valueNamed(values, "n");
    const auto* count = value ? std::get_if<std::int64_t>(&value->held()) : nullptr;
    return count ? std::optional{*count} : std::nullopt;
}

std::string written(const Sentence& sentence, const Language& language, bool begins) {
    if (sentence.isAsItIs())
        return sentence.pattern();
    return filled(language.pattern(sentence.pattern(), countOf(sentence.values())), sentence.values(),
                  language, begins);
}

// The names of the places in a pattern.
std::vector<std::string_view> placesIn(std::string_view pattern) {
    std::vector<std::string_view> places;
    for (auto open = pattern.find('{'); open != std::string_view::npos; open = pattern.find('{', open + 1))
        places.push_back(pattern.substr(open + 1, pattern.find('}', open) - open - 1));
    return places;
}

// A count may show in the form alone: "the last roll|the last {n} rolls".
[[maybe_unused]] bool fits(std::string_view pattern, const std::vector<NamedValue>& values) {
    const auto places = placesIn(pattern);
    const auto hasValue = [&](std::string_view place) { return valueNamed(values, place) != nullptr; };
    const auto hasPlace = [&](const NamedValue& value) {
        return value.name == "n" || std::ranges::find(places, value.name) != places.end();
    };
    return std::ranges::all_of(places, hasValue) && std::ranges::all_of(values, hasPlace);
}

} // namespace

Parts::Parts(std::vector<Sentence> sentences, Beginning beginning)
    : m_sentences(std::make_shared<const std::vector<Sentence>>(std::move(sentences)))
    , m_beginning(beginning) {}

bool Parts::operator==(const Parts& other) const {
    return m_beginning == other.m_beginning && sentences() == other.sentences();
}

Value::Value(Sentence part)
    : Value(std::vector<Sentence>{std::move(part)}) {}

Value::Value(Parts parts)
    : m_held(std::move(parts)) {}

Value::Value(Phrase part)
    : Value(Sentence{part}) {}

Value::Value(std::vector<Sentence> parts)
    : Value(Parts{std::move(parts)}) {}

Sentence::Sentence(Phrase phrase)
    : Sentence(std::string{phrase.english}, {}) {}

Sentence::Sentence(std::string pattern, std::vector<NamedValue> values)
    : m_pattern(std::move(pattern))
    , m_values(std::move(values)) {}

bool Sentence::says(const Sentence& other) const {
    const auto isSaidBy = [&](const NamedValue& named) {
        const auto* parts = std::get_if<Parts>(&named.value.held());
        return parts && std::ranges::any_of(parts->sentences(),
                                            [&](const Sentence& part) { return part.says(other); });
    };
    return *this == other || std::ranges::any_of(m_values, isSaidBy);
}

std::string Sentence::in(const Language& language) const {
    return written(*this, language, true);
}

std::string Sentence::english() const {
    return in(englishLanguage());
}

std::ostream& operator<<(std::ostream& out, Phrase phrase) {
    return out << phrase.english;
}

std::ostream& operator<<(std::ostream& out, const Sentence& sentence) {
    return out << sentence.english();
}

Sentence said(std::string_view pattern, std::vector<NamedValue> values) {
    Sentence sentence{std::string{pattern}, std::move(values)};
#ifndef NDEBUG // in what people run, a place without a value is read as it is written
    HOLDFAST_ASSERT(fits(pattern, sentence.values()));
#endif
    return sentence;
}

Sentence asItIs(std::string words) {
    Sentence sentence;
    sentence.m_pattern = std::move(words);
    sentence.m_isAsItIs = true;
    return sentence;
}

Value withinLine(Sentence part) {
    return Parts({std::move(part)}, Beginning::Small);
}

Value asAlone(Sentence part) {
    return Parts({std::move(part)}, Beginning::AsAlone);
}

Sentence withCapital(Sentence part) {
    return said("{part}", {{"part", std::move(part)}});
}

Sentence oneAfterTheOther(Sentence first, Sentence then) {
    return said("{first} {then}", {{"first", std::move(first)}, {"then", std::move(then)}});
}

Sentence listed(std::vector<Sentence> parts) {
    HOLDFAST_ASSERT(!parts.empty());
    Sentence last = std::move(parts.back());
    parts.pop_back();
    return parts.empty()
               ? last
               : said("{parts} and {last}", {{"parts", std::move(parts)}, {"last", std::move(last)}});
}

} // namespace holdfast
