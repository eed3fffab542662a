// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// SHA-256 (FIPS 180-4) by libsodium, of which the first 16 bytes are kept: enough that no two contents of a
// shop ever have the same.

#include <sodium/crypto_hash_sha256.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace holdfast::db {

using Hash = std::array<std::byte, 16>;
using Salt = std::array<std::byte, 8>;

class Digest {
public:
    Digest();

    // Numbers and texts are told apart from their neighbours; bytes are added as they are.
    void add(std::span<const std::byte> bytes);
    void add(std::int64_t number);
    void add(std::string_view text);

    // REQUIRES: asked once.
    Hash value();

private:
    crypto_hash_sha256_state m_state{};
};

// Two letters a byte: "ba78…".
std::string hex(const Hash& hash);

// By chance, from the system's own source.
Salt randomSalt();
std::int64_t randomNumber(std::int64_t below); // 0 to below - 1; REQUIRES: 0 < below < 2^62

} // namespace holdfast::db
