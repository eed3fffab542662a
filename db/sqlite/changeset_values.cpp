// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/changeset_values.h"

#include "core/trade/assertion.h"
#include "core/trade/unit_words.h"
#include "db/sqlite/changeset_form.h"

#include <sqlite3.h>

#include <bit>
#include <cstring>

namespace holdfast::db {

namespace {

constexpr std::size_t kNumberBytes = 8;
constexpr std::size_t kLongestInWords = 60;

// Of bytes that were looked at before: the bounds hold.
class ValuesReader {
public:
    ValuesReader(ChangesetView bytes, const std::function<void(const ValueChange&)>& see)
        : m_rest(bytes)
        , m_see(see) {}

    void readAll() {
        while (!m_rest.empty()) {
            if (m_rest.front() == std::byte{'T'})
                readTable();
            else
                readChange();
        }
    }

private:
    ChangesetView take(std::size_t count) {
        const ChangesetView taken = m_rest.first(count);
        m_rest = m_rest.subspan(count);
        return taken;
    }

    // SQLite's variable-length number: seven bits a byte, the ninth byte whole.
    std::uint64_t number() {
        std::uint64_t number = 0;
        for (int at = 0; at < 8; ++at) {
            const auto byte = std::to_integer<std::uint64_t>(take(1).front());
            number = (number << 7) | (byte & 0x7F);
            if (byte < 0x80)
                return number;
        }
        return (number << 8) | std::to_integer<std::uint64_t>(take(1).front());
    }

    void readTable() {
        take(1);
        const auto columns = static_cast<std::size_t>(number());
        m_isKey.clear();
        for (const std::byte place : take(columns))
            m_isKey.push_back(place != std::byte{0});
        const auto* name = reinterpret_cast<const char*>(m_rest.data());
        m_table = std::string_view{name};
        take(m_table.size() + 1);
    }

    void readRow(std::vector<ValueBytes>& row) {
        row.resize(m_isKey.size());
        for (ValueBytes& value : row) {
            const ChangesetView start = m_rest;
            switch (std::to_integer<int>(take(1).front())) {
            case SQLITE_INTEGER:
            case SQLITE_FLOAT:
                take(kNumberBytes);
                break;
            case SQLITE_TEXT:
            case SQLITE_BLOB:
                take(static_cast<std::size_t>(number()));
                break;
            default:
                break;
            }
            value = start.first(start.size() - m_rest.size());
        }
    }

    void readChange() {
        const int operation = std::to_integer<int>(take(2).front());
        if (operation != SQLITE_INSERT)
            readRow(m_before);
        if (operation != SQLITE_DELETE)
            readRow(m_after);
        if (operation == SQLITE_INSERT)
            m_see({ChangeKind::Insert, m_table, m_isKey, {}, m_after});
        else if (operation == SQLITE_DELETE)
            m_see({ChangeKind::Delete, m_table, m_isKey, m_before, {}});
        else
            m_see({ChangeKind::Update, m_table, m_isKey, m_before, m_after});
    }

    ChangesetView m_rest;
    const std::function<void(const ValueChange&)>& m_see;
    std::string_view m_table;
    std::vector<bool> m_isKey;
    std::vector<ValueBytes> m_before;
    std::vector<ValueBytes> m_after;
};

std::uint64_t bitsOf(ValueBytes value) {
    std::uint64_t bits = 0;
    for (const std::byte byte : value.subspan(1, kNumberBytes))
        bits = (bits << 8) | std::to_integer<std::uint64_t>(byte);
    return bits;
}

// Of a text or of bytes: what follows its length.
std::span<const std::byte> contentOf(ValueBytes value) {
    std::size_t at = 1;
    while (at < 9 && (value[at] & std::byte{0x80}) != std::byte{0})
        ++at;
    return value.subspan(at + 1);
}

void addNumber(std::uint64_t bits, std::vector<std::byte>& into) {
    for (int shift = 56; shift >= 0; shift -= 8)
        into.push_back(static_cast<std::byte>((bits >> shift) & 0xFF));
}

// As SQLite writes it, for lengths below 2^56.
void addLength(std::uint64_t length, std::vector<std::byte>& into) {
    int shift = 49;
    while (shift > 0 && (length >> shift) == 0)
        shift -= 7;
    for (; shift > 0; shift -= 7)
        into.push_back(static_cast<std::byte>(((length >> shift) & 0x7F) | 0x80));
    into.push_back(static_cast<std::byte>(length & 0x7F));
}

void addValue(const Query& row, int column, std::vector<std::byte>& into) {
    const int type = row.type(column);
    into.push_back(static_cast<std::byte>(type));
    switch (type) {
    case SQLITE_INTEGER:
        addNumber(static_cast<std::uint64_t>(row.integer(column)), into);
        break;
    case SQLITE_FLOAT:
        addNumber(std::bit_cast<std::uint64_t>(row.real(column)), into);
        break;
    case SQLITE_TEXT: {
        const std::string_view text = row.view(column);
        addLength(text.size(), into);
        const auto bytes = std::as_bytes(std::span{text});
        into.insert(into.end(), bytes.begin(), bytes.end());
        break;
    }
    case SQLITE_BLOB: {
        const auto bytes = row.bytes(column);
        addLength(bytes.size(), into);
        into.insert(into.end(), bytes.begin(), bytes.end());
        break;
    }
    default:
        break;
    }
}

} // namespace

void forEachValue(ChangesetView changeset, const std::function<void(const ValueChange&)>& see) {
    requireWhole(changeset);
    ValuesReader{changeset, see}.readAll();
}

Changeset withOtherValues(ChangesetView changeset, const InsteadOf& instead) {
    Changeset changed;
    const std::byte* kept = changeset.data();
    forEachValue(changeset, [&](const ValueChange& change) {
        for (const auto row : {change.before, change.after})
            for (std::size_t column = 0; column < row.size(); ++column) {
                const auto other = instead(change, column, row[column]);
                if (!other)
                    continue;
                changed.insert(changed.end(), kept, row[column].data());
                changed.insert(changed.end(), other->begin(), other->end());
                kept = row[column].data() + row[column].size();
            }
    });
    changed.insert(changed.end(), kept, changeset.data() + changeset.size());
    return changed;
}

std::vector<std::byte> textValue(std::string_view text) {
    std::vector<std::byte> value{static_cast<std::byte>(SQLITE_TEXT)};
    addLength(text.size(), value);
    const auto bytes = std::as_bytes(std::span{text});
    value.insert(value.end(), bytes.begin(), bytes.end());
    return value;
}

std::vector<std::byte> nullValue() {
    return {static_cast<std::byte>(SQLITE_NULL)};
}

std::optional<std::int64_t> integerIn(ValueBytes value) {
    if (value.empty() || value.front() != static_cast<std::byte>(SQLITE_INTEGER))
        return std::nullopt;
    return static_cast<std::int64_t>(bitsOf(value));
}

bool isNothing(ValueBytes value) {
    return value.empty() || value.front() == std::byte{0};
}

bool isNull(ValueBytes value) {
    return !value.empty() && value.front() == std::byte{SQLITE_NULL};
}

std::span<const ValueBytes> RowBytes::of(const Query& row, std::size_t columns) {
    m_bytes.clear();
    m_values.clear();
    m_ends.clear();
    for (std::size_t column = 0; column < columns; ++column) {
        addValue(row, static_cast<int>(column), m_bytes);
        m_ends.push_back(m_bytes.size());
    }
    std::size_t start = 0; // the bytes move while they grow
    for (const std::size_t end : m_ends) {
        m_values.push_back(ValueBytes{m_bytes}.subspan(start, end - start));
        start = end;
    }
    return m_values;
}

std::string bareWords(ValueBytes value) {
    if (isNothing(value))
        return {};
    switch (std::to_integer<int>(value.front())) {
    case SQLITE_INTEGER:
        return std::to_string(static_cast<std::int64_t>(bitsOf(value)));
    case SQLITE_FLOAT:
        return numberWords(std::bit_cast<double>(bitsOf(value)));
    case SQLITE_TEXT: {
        const auto content = contentOf(value);
        return {reinterpret_cast<const char*>(content.data()), content.size()};
    }
    case SQLITE_BLOB:
        return "bytes";
    default:
        return {};
    }
}

std::string valueWords(ValueBytes value) {
    if (isNothing(value) || isNull(value))
        return "nothing";
    const std::string text = bareWords(value);
    std::size_t end = std::min(text.size(), kLongestInWords);
    while (end > 0 && end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80)
        --end; // inside a letter of several bytes
    return "“" + text.substr(0, end) + (end < text.size() ? "…”" : "”");
}

void bindValue(Query& query, int place, ValueBytes value) {
    HOLDFAST_ASSERT(!isNothing(value));
    switch (std::to_integer<int>(value.front())) {
    case SQLITE_INTEGER:
        query.bind(place, static_cast<std::int64_t>(bitsOf(value)));
        break;
    case SQLITE_FLOAT:
        query.bind(place, std::bit_cast<double>(bitsOf(value)));
        break;
    case SQLITE_TEXT: {
        const auto content = contentOf(value);
        query.bind(place, std::string_view{reinterpret_cast<const char*>(content.data()), content.size()});
        break;
    }
    case SQLITE_BLOB:
        query.bind(place, contentOf(value));
        break;
    default:
        query.bind(place, nullptr);
    }
}

} // namespace holdfast::db
