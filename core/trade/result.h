// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A value, or the reason in words why there is none.
//
// Everything that people and files do can fail; what they get back is a Result. The message is a sentence a
// maker understands and says what is allowed; `field` names the form's field it speaks of, or is empty.
// Mistakes of programmers are asserted instead (core/trade/assertion.h).

#include "core/trade/assertion.h"
#include "core/trade/sentence.h"

#include <string>
#include <utility>
#include <variant>

namespace holdfast {

struct Error {
    Sentence message;
    std::string field;

    // That the same is said of the same field.
    bool operator==(const Error& other) const {
        return field == other.field && message.english() == other.message.english();
    }
};

// What a step returns that has nothing to hand back but its success.
struct Done {
    bool operator==(const Done&) const = default;
};

template <class T = Done>
class [[nodiscard]] Result {
public:
    Result(T value)
        : m_held(std::in_place_index<0>, std::move(value)) {}
    Result(Error error)
        : m_held(std::in_place_index<1>, std::move(error)) {}

    bool ok() const { return m_held.index() == 0; }
    explicit operator bool() const { return ok(); }

    const T& value() const& {
        HOLDFAST_ASSERT(ok());
        return *std::get_if<0>(&m_held);
    }
    T& value() & {
        HOLDFAST_ASSERT(ok());
        return *std::get_if<0>(&m_held);
    }
    T value() && {
        HOLDFAST_ASSERT(ok());
        return std::move(*std::get_if<0>(&m_held));
    }
    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }

    const Error& error() const {
        HOLDFAST_ASSERT(!ok());
        return *std::get_if<1>(&m_held);
    }

private:
    std::variant<T, Error> m_held;
};

inline Error fieldError(std::string field, Sentence message) {
    return Error{std::move(message), std::move(field)};
}

inline Error plainError(Sentence message) {
    return Error{std::move(message), {}};
}

} // namespace holdfast
