// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The numbered SQL steps that build the shop file, step 1 first, embedded from db/schema/*.sql.

#include <span>

namespace holdfast::db {

std::span<const char* const> schemaSteps();

} // namespace holdfast::db
