// SPDX-License-Identifier: GPL-3.0-or-later
// A news file of any bytes: the input itself, or real news with some of its bytes changed, which gets
// further.
#include "db/exchange/news_file.h"

#include "tests/long/fuzz/fuzz_target.h"
#include "tests/long/fuzz/prepared_shop.h"

namespace holdfast::fuzz {
namespace {

// Four bytes each: where, and what.
std::string changedNews(std::string_view input) {
    static const std::string real = db::testing::bytesOf(PreparedShop::instance().realNews());
    std::string news = real;
    for (Parts parts{input}; !parts.isAtEnd();) {
        const std::size_t at =
            parts.byte() | std::size_t{parts.byte()} << 8U | std::size_t{parts.byte()} << 16U;
        news[at % news.size()] = static_cast<char>(parts.byte());
    }
    return news;
}

void readNewsFile(std::string_view input) {
    PreparedShop& prepared = PreparedShop::instance();
    const auto path = prepared.aFile(input.starts_with("SQLite") || input.empty() ? std::string{input}
                                                                                  : changedNews(input));
    auto news = db::NewsReader::open(path);
    if (!news.ok()) {
        require(!news.error().message.english().empty(), "a refusal has words");
        return;
    }
    (void)news->seats();
    for (std::int64_t number = 1; number <= news->label().entries; ++number)
        (void)news->entry(number);
    (void)db::lookAtNews(prepared.workshop(), path);
}

const Registered registeredNewsFile{"news_file", readNewsFile};

} // namespace
} // namespace holdfast::fuzz
