// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What must be so unless the program itself is wrong. It is looked at in every build, also in the one that
// people run: what is not so is said on standard error, with its place in the source, and the program ends
// before it writes anything wrong. What was done is in the shop file by then, and a half-typed order is saved
// as it is typed.

namespace holdfast {

[[noreturn]] void assertionFailed(const char* condition, const char* file, int line) noexcept;

} // namespace holdfast

#define HOLDFAST_ASSERT(condition)                                                                           \
    (static_cast<bool>(condition) ? static_cast<void>(0)                                                     \
                                  : ::holdfast::assertionFailed(#condition, __FILE__, __LINE__))
