// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/check.h"

#include "db/check/check_parts.h"
#include "db/journal/ledger_faults.h"
#include "db/journal/shop.h"
#include "db/sqlite/page_check.h"
#include "db/sqlite/stopping.h"
#include "db/tables/facts.h"
#include "db/tables/unread_everywhere.h"

#include <functional>

namespace holdfast::db {

namespace {

void checkPages(Connection& connection, Findings& findings) {
    Query rows = connection.query("PRAGMA integrity_check(20)");
    while (rows.step()) {
        requireOfTheFile(rows.view(0));
        if (rows.view(0) != "ok")
            findings.push_back(said("The file is damaged: {damage}.", {{"damage", rows.text(0)}}));
    }
}

void checkReferences(Connection& connection, Findings& findings) {
    Query rows = connection.query("SELECT \"table\", COUNT(*), parent FROM pragma_foreign_key_check "
                                  "GROUP BY \"table\", parent");
    while (rows.step())
        findings.push_back(said("In {table}, {n} row refers to a row of {parent} that is not there.|"
                                "In {table}, {n} rows refer to a row of {parent} that is not there.",
                                {{"table", rows.text(0)}, {"n", rows.integer(1)}, {"parent", rows.text(2)}}));
}

void checkLedgers(Connection& connection, Findings& findings) {
    for (Sentence& fault : ledgerFaults(connection))
        findings.push_back(std::move(fault));
}

bool hasTable(Connection& connection, std::string_view name) {
    return connection.number("SELECT COUNT(*) FROM sqlite_schema WHERE name = ?1", name) > 0;
}

// One part after another. A part that cannot go on, for damage or because a table is missing, says so; the
// next is looked at all the same.
class Checking {
public:
    Checking(Shop& shop, const TellCheck& tell)
        : m_shop(shop)
        , m_tell(tell) {}

    using Part = std::function<void(Connection&, Findings&, const TellProgress&)>;

    void part(double share, Phrase words, const Part& look) {
        Connection& connection = m_shop.connection();
        m_words = words;
        m_now = m_done;
        const TellProgress told = [this, share](double of) {
            m_now = m_done + share * of;
            return mayGoOn();
        };
        try {
            const Stopping stopping{connection,
                                    m_tell ? [this] { return mayGoOn(); } : std::function<bool()>{}};
            look(connection, m_findings, told);
        } catch (const SqliteFailure& failure) {
            if (failure.isStopped() || failure.isBusy() || failure.isOfTheDisk())
                throw;
            m_findings.push_back(
                failure.isDamage()
                    ? said("The file is damaged: {damage}.", {{"damage", failure.what()}})
                    : said("Not all could be looked at. {why}", {{"why", failure.error().message}}));
        }
        m_done += share;
    }

    Findings takeFindings() { return std::move(m_findings); }

private:
    bool mayGoOn() const { return !m_tell || m_tell(std::min(m_now, 1.0), m_words); }

    Shop& m_shop;
    const TellCheck& m_tell;
    Findings m_findings;
    Phrase m_words;
    double m_done = 0;
    double m_now = 0;
};

// Without progress of its own.
Checking::Part plainPart(void (*look)(Connection&, Findings&)) {
    return [look](Connection& connection, Findings& findings, const TellProgress&) {
        look(connection, findings);
    };
}

Checking::Part schemaPart(Shop& shop) {
    return [&shop](Connection& connection, Findings& findings, const TellProgress&) {
        checkSchema(connection, shop.steps(), findings);
    };
}

// The trade’s own tables are not in every shop of the tests.
bool isOfTheTrade(Shop& shop) {
    return hasTable(shop.connection(), "blank_style");
}

} // namespace

Sentence sentenceOf(const UnreadRow& row) {
    return said("{row}: {why} {leftOut}", {{"row", row.what}, {"why", row.why}, {"leftOut", row.leftOut}});
}

Result<std::vector<Sentence>> checkShop(Shop& shop, const TellCheck& tell) {
    return shop.read([&](Connection&) {
        Checking checking{shop, tell};
        checking.part(0.20, phrase("the pages of the file"), plainPart(checkPages));
        checking.part(0.02, phrase("its tables"), schemaPart(shop));
        checking.part(0.08, phrase("what rows refer to"), plainPart(checkReferences));
        checking.part(0.05, phrase("the ledgers"), plainPart(checkLedgers));
        checking.part(0.10, phrase("the journal"), plainPart(checkJournal));
        checking.part(0.02, phrase("what was undone"), plainPart(checkUndos));
        checking.part(0.01, phrase("the line of entries"), plainPart(checkLine));
        checking.part(0.10, phrase("each entry against its seal"),
                      [](Connection& connection, Findings& findings, const TellProgress& told) {
                          checkSeals(connection, told, findings);
                      });
        checking.part(0.01, phrase("the line against its marks"), plainPart(checkMarks));
        checking.part(0.20, phrase("every row against its history"),
                      [](Connection& connection, Findings& findings, const TellProgress& told) {
                          checkHistory(connection, told, findings);
                      });
        if (isOfTheTrade(shop)) {
            checking.part(0.11, phrase("every fact of every order"),
                          [](Connection& connection, Findings& findings, const TellProgress& told) {
                              for (const UnreadRow& row : unreadEverywhere(connection, told))
                                  findings.push_back(sentenceOf(row));
                          });
            checking.part(0.03, phrase("the order book"), plainPart(checkOrderCards));
            if (hasTable(shop.connection(), "garment_card"))
                checking.part(0.02, phrase("what the figures count"), plainPart(checkGarmentCards));
            checking.part(0.05, phrase("the search"),
                          [&shop](Connection& connection, Findings& findings, const TellProgress&) {
                              checkSearch(connection, shop.steps(), findings);
                          });
        }
        return checking.takeFindings();
    });
}

Result<QuickFindings> checkQuickly(Shop& shop, const TellCheck& tell) {
    return shop.read([&](Connection&) {
        Checking checking{shop, tell};
        QuickFindings found;
        checking.part(0.02, phrase("its tables"), schemaPart(shop));
        checking.part(0.08, phrase("the ledgers"), plainPart(checkLedgers));
        checking.part(0.50, phrase("every row against its history"),
                      [](Connection& connection, Findings& findings, const TellProgress& told) {
                          checkHistory(connection, told, findings);
                      });
        if (isOfTheTrade(shop))
            checking.part(0.40, phrase("every fact"),
                          [&found](Connection& connection, Findings& findings, const TellProgress& told) {
                              // Where every row is as an action wrote it, the orders that are done hold
                              // nothing new.
                              found.unread = findings.empty() ? loadOpenFacts(connection).unread
                                                              : unreadEverywhere(connection, told);
                          });
        found.sentences = checking.takeFindings();
        return found;
    });
}

} // namespace holdfast::db
