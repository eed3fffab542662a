// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Who is forgotten by the entries of a news file, known before any of them is applied: the entries before
// such a one hold no name any more, and would not fit rows that still do.

#include "db/exchange/news_file.h"
#include "db/forgetting/forgotten_people.h"

#include <vector>

namespace holdfast::db {

class Connection;

// At the workshop, by the numbers that their rows have here. Left out are rows that the news brings: of those
// nothing is here yet. Entries up to the place `common` of the line are here already.
ForgottenPeople forgottenByLaptop(Connection& connection, NewsReader& news, std::int64_t common);

// On a laptop: the line's numbers are its own.
ForgottenPeople forgottenByLine(NewsReader& news, std::int64_t common);

// The same people by the numbers that entries of this laptop, which are yet to be done over the line, have
// for them: the line may have given them others.
ForgottenPeople asOwnEntriesNameThem(ForgottenPeople people, NewsReader& news,
                                     const std::vector<CarriedEntry>& own);

} // namespace holdfast::db
