// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/common_place.h"

#include "db/exchange/laptops.h"

namespace holdfast::db {

namespace {

// The line as it is here, and at the workshop as it will be once its own entries are in it.
class LineHere {
public:
    explicit LineHere(Connection& connection)
        : m_connection(connection)
        , m_last(endOfLine(connection)) {
        if (isTheWorkshop(connection))
            m_toCome = behindTheLine(connection);
    }

    bool has(const PlaceInLine& place) {
        if (place.place <= m_last.place && m_added.empty())
            return placeInLine(m_connection, place.place) == place;
        while (m_last.place < place.place && m_added.size() < m_toCome.size()) {
            m_last = placeBehind(m_last, *writtenSeal(m_connection, m_toCome[m_added.size()]));
            m_added.push_back(m_last);
        }
        if (place.place > m_last.place)
            return false;
        const std::int64_t written = m_last.place - static_cast<std::int64_t>(m_added.size());
        if (place.place <= written)
            return placeInLine(m_connection, place.place) == place;
        return m_added[static_cast<std::size_t>(place.place - written - 1)] == place;
    }

private:
    Connection& m_connection;
    PlaceInLine m_last;
    std::vector<EntryId> m_toCome;
    std::vector<PlaceInLine> m_added;
};

} // namespace

std::optional<PlaceInLine> commonPlace(Connection& connection, NewsReader& news) {
    const NewsLabel& label = news.label();
    LineHere here{connection};
    if (!here.has(label.behind))
        return std::nullopt;
    PlaceInLine common = label.behind;
    PlaceInLine last = label.behind;
    for (std::int64_t number = 1; number <= label.ofTheLine(); ++number) {
        last = placeBehind(last, sealOf(news.entry(number)));
        if (common.place + 1 == last.place && here.has(last))
            common = last;
    }
    if (last != label.known)
        throw SqliteFailure::inWords(said("The news is not complete. Save it again on the other laptop. "
                                          "Nothing was brought in."));
    return common;
}

} // namespace holdfast::db
