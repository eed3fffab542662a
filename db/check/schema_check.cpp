// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/check_parts.h"
#include "db/sqlite/connection.h"

#include <map>
#include <mutex>

namespace holdfast::db {

namespace {

// What SQLite keeps for itself is left out.
Schema schemaOf(Connection& connection) {
    Schema schema;
    Query rows{connection, "SELECT type || ' ' || name, COALESCE(sql, '') FROM sqlite_schema "
                           "WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\'"};
    while (rows.step())
        schema[rows.text(0)] = rows.text(1);
    return schema;
}

} // namespace

void addNamed(Findings& findings, const std::vector<Sentence>& sentences, Phrase andMore) {
    for (std::size_t at = 0; at < sentences.size() && at < kMostNamed; ++at)
        findings.push_back(sentences[at]);
    if (sentences.size() > kMostNamed)
        findings.push_back(said(andMore.english, {{"n", sentences.size() - kMostNamed}}));
}

const Schema& schemaMadeBy(Shop::Steps steps) {
    static std::mutex guard; // checks run in the background
    static std::map<const void*, Schema> made;
    const std::lock_guard lock{guard};
    Schema& schema = made[steps.data()];
    if (schema.empty())
        schema = schemaOf(Shop::createInMemory([] { return Instant{}; }, steps)->connection());
    return schema;
}

SchemaOdds schemaOdds(Connection& connection, Shop::Steps steps) {
    SchemaOdds odds;
    const Schema& wanted = schemaMadeBy(steps);
    const Schema here = schemaOf(connection);
    for (const auto& [name, sql] : wanted) {
        const auto found = here.find(name);
        if (found == here.end())
            odds.missing.push_back(name);
        else if (found->second != sql)
            odds.other.push_back(name);
    }
    for (const auto& [name, sql] : here)
        if (!wanted.contains(name))
            odds.foreign.push_back(name);
    return odds;
}

void checkSchema(Connection& connection, Shop::Steps steps, Findings& findings) {
    const SchemaOdds odds = schemaOdds(connection, steps);
    std::vector<Sentence> sentences;
    for (const std::string& name : odds.missing)
        sentences.push_back(said("The {part} is missing from the file.", {{"part", name}}));
    for (const std::string& name : odds.foreign)
        sentences.push_back(said("The file has a {part}, which is not of a shop.", {{"part", name}}));
    for (const std::string& name : odds.other)
        sentences.push_back(said("The {part} is not as Holdfast makes it.", {{"part", name}}));
    addNamed(findings, sentences,
             phrase("And {n} more part of the file is not as it should be.|"
                    "And {n} more parts of the file are not as they should be."));
}

} // namespace holdfast::db
