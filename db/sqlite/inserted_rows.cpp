// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/inserted_rows.h"

#include "core/trade/assertion.h"

#include <sqlite3.h>

#include <bit>
#include <utility>

namespace holdfast::db {

namespace {

constexpr std::size_t kLongestVarint = 127; // that fits one byte: more columns no table here has
constexpr std::size_t kNumber = 9;          // its type and eight bytes

std::byte asByte(std::uint64_t value) {
    return static_cast<std::byte>(value & 0xFF);
}

} // namespace

InsertedRows::InsertedRows(std::string_view table, std::span<const std::uint8_t> keyPlaces)
    : m_table(table)
    , m_columns(keyPlaces.size()) {
    HOLDFAST_ASSERT(keyPlaces.size() <= kLongestVarint);
    m_changeset.push_back(std::byte{'T'});
    m_changeset.push_back(asByte(keyPlaces.size()));
    for (const std::uint8_t place : keyPlaces)
        m_changeset.push_back(asByte(place));
    for (const char letter : table)
        m_changeset.push_back(static_cast<std::byte>(letter));
    m_changeset.push_back(std::byte{0});
    m_head = m_changeset.size();
}

void InsertedRows::reserve(std::size_t rows) {
    m_changeset.reserve(m_head + rows * (2 + m_columns * kNumber));
}

void InsertedRows::beginRow() {
    m_changeset.push_back(asByte(SQLITE_INSERT));
    m_changeset.push_back(std::byte{0}); // not by a trigger
}

void InsertedRows::integer(std::int64_t number) {
    m_changeset.push_back(asByte(SQLITE_INTEGER));
    bytes(static_cast<std::uint64_t>(number));
}

void InsertedRows::real(double number) {
    m_changeset.push_back(asByte(SQLITE_FLOAT));
    bytes(std::bit_cast<std::uint64_t>(number));
}

void InsertedRows::null() {
    m_changeset.push_back(asByte(SQLITE_NULL));
}

void InsertedRows::bytes(std::uint64_t bits) {
    for (int shift = 56; shift >= 0; shift -= 8)
        m_changeset.push_back(asByte(bits >> shift));
}

Changeset InsertedRows::take() {
    if (m_changeset.size() == m_head)
        return {};
    return std::exchange(m_changeset, {});
}

} // namespace holdfast::db
