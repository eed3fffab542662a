// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/due_days_file.h"

#include "app/desk/formats.h"
#include "db/disk/new_file.h"
#include "db/exchange/laptops.h"
#include "db/tables/facts.h"

#include <fstream>

namespace holdfast::app {

namespace {

// Whether it begins as what is written here.
bool isDueDays(const std::filesystem::path& path) {
    const std::string beginning = dueDaysCalendar({}, 0, {}, {});
    const std::size_t same = beginning.find("END:VCALENDAR");
    std::string there(same, '\0');
    std::ifstream file(path, std::ios::binary);
    return file.read(there.data(), static_cast<std::streamsize>(same)) && beginning.starts_with(there);
}

} // namespace

Result<DueDaysWritten> writeDueDays(db::Shop& shop, const std::filesystem::path& target, const Now& now,
                                    Names names) {
    DueDaysWritten written;
    const auto text = shop.read([&](db::Connection& connection) {
        const ShopFacts facts = db::loadOpenFacts(connection);
        const auto days = dueDays(facts, now, names);
        written = {days.size(), facts.unread.empty()};
        return dueDaysCalendar(days, db::shopNumber(connection), now.instant,
                               [](const Sentence& sentence) { return plain(words(sentence)); });
    });
    if (!text.ok())
        return text.error();
    auto file = isDueDays(target) ? db::NewFile::beginOver(target) : db::NewFile::begin(target);
    if (!file.ok())
        return file.error();
    if (const auto filled = file->write(*text); !filled.ok())
        return filled.error();
    if (const auto kept = file->keep(); !kept.ok())
        return kept.error();
    return written;
}

} // namespace holdfast::app
