// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/digest.h"

#include "core/trade/assertion.h"
#include "db/sqlite/failure.h"

#include <sodium/core.h>
#include <sodium/randombytes.h>

#include <algorithm>

namespace holdfast::db {

namespace {

const unsigned char* asLetters(std::span<const std::byte> bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}

void beginChance() {
    if (sodium_init() < 0)
        throw SqliteFailure::inWords(said("This computer gives out no random numbers, which a shop needs."));
}

} // namespace

Digest::Digest() {
    crypto_hash_sha256_init(&m_state);
}

void Digest::add(std::span<const std::byte> bytes) {
    crypto_hash_sha256_update(&m_state, asLetters(bytes), bytes.size());
}

void Digest::add(std::int64_t number) {
    std::array<std::byte, 8> bytes{};
    for (std::size_t at = 0; at < bytes.size(); ++at)
        bytes[at] = static_cast<std::byte>((static_cast<std::uint64_t>(number) >> (8 * at)) & 0xFF);
    add(std::span<const std::byte>{bytes});
}

void Digest::add(std::string_view text) {
    add(static_cast<std::int64_t>(text.size()));
    add(std::as_bytes(std::span{text}));
}

Hash Digest::value() {
    std::array<std::byte, crypto_hash_sha256_BYTES> whole{};
    crypto_hash_sha256_final(&m_state, reinterpret_cast<unsigned char*>(whole.data()));
    Hash first{};
    std::copy_n(whole.begin(), first.size(), first.begin());
    return first;
}

std::string hex(const Hash& hash) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const std::byte byte : hash) {
        text += digits[std::to_integer<std::size_t>(byte >> 4)];
        text += digits[std::to_integer<std::size_t>(byte & std::byte{0xF})];
    }
    return text;
}

Salt randomSalt() {
    beginChance();
    Salt salt{};
    randombytes_buf(salt.data(), salt.size());
    return salt;
}

std::int64_t randomNumber(std::int64_t below) {
    HOLDFAST_ASSERT(below > 0 && below < (std::int64_t{1} << 62));
    beginChance();
    std::uint64_t bits = 0;
    randombytes_buf(&bits, sizeof bits);
    return static_cast<std::int64_t>(bits % static_cast<std::uint64_t>(below));
}

} // namespace holdfast::db
