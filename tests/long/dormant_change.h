// SPDX-License-Identifier: GPL-3.0-or-later
// Changes that lie dormant in core until one is chosen: small_changes.py weaves them into a copy of core, so
// that one build holds hundreds. The variable HOLDFAST_CHANGE names the one that is awake; where it is unset,
// none is, and everything is as it was written. Any thread.
#pragma once

#include <algorithm>
#include <atomic>
#include <cmath>
#include <initializer_list>
#include <type_traits>

namespace dormant {

inline constexpr int kMostChanges = 8192;

inline constexpr int kNotReadYet = -2;
extern std::atomic<int> chosenChange;
extern std::atomic<bool> isNoting; // which changes are reached
int readChosen();
void note(int change);
bool wasReached(int change);
void forgetReached();

inline bool isChosen(int change) {
    int chosen = chosenChange.load(std::memory_order_relaxed);
    if (chosen == kNotReadYet) [[unlikely]]
        chosen = readChosen();
    if (isNoting.load(std::memory_order_relaxed)) [[unlikely]]
        note(change);
    return change == chosen;
}

constexpr bool awake(int change) {
    return !std::is_constant_evaluated() && isChosen(change);
}

template <class Value>
constexpr Value value(int change, Value written, Value instead) {
    return awake(change) ? instead : written;
}
// A constant is given its value before main, and noted where it is read.
template <class Value>
Value early(int change, Value written, Value instead) {
    return isChosen(change) ? instead : written;
}
template <int... changes, class Constant>
const Constant& read(const Constant& constant) {
    (isChosen(changes), ...);
    return constant;
}

// `a && b` becomes `a && left(n) || right(n) && b`; `||` the same way. What was read left of it is carried
// over to the right of it, so that neither side is read twice, nor read where it was not.
bool leftOfAnd(int change);
bool leftOfOr(int change);
bool rightOfAnd(int change);
bool rightOfOr(int change);

// `a < b` becomes `a < Less{n} < b`: the same precedence, so that everything around it is read as before.
// What has no such change, as two words that are joined cannot be subtracted, stays as it is written.
template <class Operator, class Side>
struct HalfRead {
    const Side& side;
    int change;
};

#define DORMANT_OPERATOR(NAME, WRITTEN, INSTEAD)                                                             \
    struct NAME {                                                                                            \
        int change;                                                                                          \
    };                                                                                                       \
    template <class Left>                                                                                    \
    constexpr HalfRead<NAME, Left> operator WRITTEN(const Left & left, NAME by) {                            \
        return {left, by.change};                                                                            \
    }                                                                                                        \
    template <class Left, class Right>                                                                       \
    constexpr auto operator WRITTEN(HalfRead<NAME, Left> half, const Right& right) {                         \
        using Result = decltype(half.side WRITTEN right);                                                    \
        if constexpr (requires { Result(half.side INSTEAD right); })                                         \
            return awake(half.change) ? Result(half.side INSTEAD right) : Result(half.side WRITTEN right);   \
        else                                                                                                 \
            return Result(half.side WRITTEN right);                                                          \
    }

DORMANT_OPERATOR(Less, <, <=)
DORMANT_OPERATOR(LessOrSame, <=, <)
DORMANT_OPERATOR(More, >, >=)
DORMANT_OPERATOR(MoreOrSame, >=, >)
DORMANT_OPERATOR(Same, ==, !=)
DORMANT_OPERATOR(Other, !=, ==)
DORMANT_OPERATOR(Plus, +, -)
DORMANT_OPERATOR(Minus, -, +)
DORMANT_OPERATOR(Times, *, /)
DORMANT_OPERATOR(Over, /, *)
#undef DORMANT_OPERATOR

// `a += b` is read from the right: `a += MoreBy{n} += b`.
#define DORMANT_ASSIGNMENT(NAME, WRITTEN, INSTEAD)                                                           \
    struct NAME {                                                                                            \
        int change;                                                                                          \
    };                                                                                                       \
    template <class Right>                                                                                   \
    constexpr HalfRead<NAME, Right> operator WRITTEN(NAME by, const Right & right) {                         \
        return {right, by.change};                                                                           \
    }                                                                                                        \
    template <class Left, class Right>                                                                       \
    constexpr Left& operator WRITTEN(Left & left, HalfRead<NAME, Right> half) {                              \
        if constexpr (requires { left INSTEAD half.side; })                                                  \
            if (awake(half.change)) {                                                                        \
                left INSTEAD half.side;                                                                      \
                return left;                                                                                 \
            }                                                                                                \
        left WRITTEN half.side;                                                                              \
        return left;                                                                                         \
    }

DORMANT_ASSIGNMENT(MoreBy, +=, -=)
DORMANT_ASSIGNMENT(LessBy, -=, +=)
#undef DORMANT_ASSIGNMENT

// `!a` becomes `Not{n} ->* a`.
struct Not {
    int change;
};
template <class Side>
constexpr bool operator->*(Not by, const Side& side) {
    return awake(by.change) ? static_cast<bool>(side) : !side;
}

template <int change>
struct Least {
    template <class Value>
    static constexpr const Value& of(const Value& a, const Value& b) {
        return awake(change) ? std::max(a, b) : std::min(a, b);
    }
    template <class Value>
    static constexpr Value of(std::initializer_list<Value> values) {
        return awake(change) ? std::max(values) : std::min(values);
    }
};
template <int change>
struct Most {
    template <class Value>
    static constexpr const Value& of(const Value& a, const Value& b) {
        return awake(change) ? std::min(a, b) : std::max(a, b);
    }
    template <class Value>
    static constexpr Value of(std::initializer_list<Value> values) {
        return awake(change) ? std::min(values) : std::max(values);
    }
};
template <int change>
double roundedDown(double value) {
    return awake(change) ? std::ceil(value) : std::floor(value);
}
template <int change>
double roundedUp(double value) {
    return awake(change) ? std::floor(value) : std::ceil(value);
}

} // namespace dormant
