// SPDX-License-Identifier: GPL-3.0-or-later
// Laptops whose files are copied, used twice and put back from older copies, and a workshop that is put back,
// as chance will, with clocks hours apart: what any file that is still there has had done on it is in all of
// them in the end.
#include "tests/db/acts_by_chance.h"

#include <algorithm>
#include <set>

namespace holdfast::db {
namespace {

using Identities = std::set<std::string>;

class CopiesByChance : public ActsByChance {
protected:
    struct File {
        std::unique_ptr<Shop> shop;
        SeatNumber seat = kWorkshopSeat;
        Seconds clockAhead{0};
        std::optional<std::filesystem::path> older;
    };

    // By chance as a file that is known to be a copy, or as one of which nobody can tell.
    std::unique_ptr<Shop> openedAsChanceWill(const std::filesystem::path& path, Seconds clockAhead) {
        if (below(2) == 0)
            hideThatItIsACopy(path);
        return opened(path, clockAhead);
    }

    static Identities identitiesIn(Shop& shop) {
        Identities found;
        Query rows = shop.connection().query("SELECT hex(identity) FROM journal_seal");
        while (rows.step())
            found.insert(rows.text(0));
        return found;
    }

    Identities identitiesAnywhere() {
        Identities all;
        for (const File& file : m_files)
            all.merge(identitiesIn(*file.shop));
        return all;
    }

    void carryByChance() {
        File& laptop = anyLaptop();
        const bool isToWorkshop = below(2) == 0;
        const auto news = isToWorkshop ? newsFrom(*laptop.shop) : newsFrom(workshop(), laptop.seat);
        if (below(6) != 0) // else it is lost
            takenIn(isToWorkshop ? workshop() : *laptop.shop, news);
    }

    void copyByChance() {
        constexpr std::size_t kMostFiles = 5;
        File& file = m_files[below(m_files.size())];
        switch (below(4)) {
        case 0:
            if (file.seat != kWorkshopSeat && m_files.size() < kMostFiles) {
                const SeatNumber seat = file.seat;
                const Seconds clockAhead = file.clockAhead;
                m_files.push_back(
                    {openedAsChanceWill(copyOf(*file.shop), clockAhead), seat, clockAhead, std::nullopt});
                ++m_used;
            }
            return;
        case 1:
            file.older = copyOf(*file.shop);
            return;
        case 2:
            if (file.older) {
                file.shop.reset();
                file.shop = openedAsChanceWill(*file.older, file.clockAhead);
                file.older.reset();
                m_made = identitiesAnywhere(); // the rest is gone with the disk
                ++m_putBack;
            }
            return;
        default:
            carryByChance();
        }
    }

    File& anyLaptop() { return m_files[1 + below(m_files.size() - 1)]; }
    Shop& workshop() { return *m_files.front().shop; }

    void begin() {
        const auto path = m_folder / "workshop.holdfast";
        ASSERT_TRUE(backup(shop(), path).ok());
        m_files.push_back({opened(path), kWorkshopSeat, Seconds{0}, std::nullopt});
        m_first = workshop().recent(1).front().id;
        for (const Seconds clockAhead : {Seconds{-Hours{3}}, Seconds{-Hours{30}}}) {
            const auto copy = m_folder / (std::to_string(m_files.size()) + ".laptop");
            const auto seat = makeCopyForLaptop(workshop(), copy, "Laptop " + std::to_string(m_files.size()));
            ASSERT_TRUE(seat.ok()) << seat.error().message.english();
            m_files.push_back({opened(copy, clockAhead), seat->number, clockAhead, std::nullopt});
        }
    }

    void carryAll() {
        for (int round = 0; round < 4; ++round)
            for (std::size_t at = 1; at < m_files.size(); ++at) {
                takenIn(workshop(), newsFrom(*m_files[at].shop));
                takenIn(*m_files[at].shop, newsFrom(workshop(), m_files[at].seat));
            }
    }

    std::vector<File> m_files; // the workshop's first
    Identities m_made;
    int m_used = 0;
    int m_putBack = 0;
};

TEST_P(CopiesByChance, LoseNothing) {
    begin();
    for (int count = 0; count < 350 && !HasFailure(); ++count) {
        File& file = m_files[below(m_files.size())];
        actOn(*file.shop);
        m_made.merge(identitiesIn(*file.shop));
        if (below(10) == 0)
            copyByChance();
        if (below(10) == 0)
            carryByChance();
    }
    carryAll();
    const Identities kept = identitiesIn(workshop());
    EXPECT_TRUE(std::ranges::includes(kept, m_made));
    for (const File& file : m_files) {
        expectSame(workshop(), *file.shop);
        expectWhole(*file.shop);
        expectSoundOn(*file.shop);
    }
    EXPECT_GT(m_done, 100);
    EXPECT_GT(m_used + m_putBack, 0) << "else chance has tested little";
    RecordProperty("other_ids",
                   static_cast<int>(numberOf(workshop(), "SELECT COUNT(*) FROM journal_other_id")));
}

INSTANTIATE_TEST_SUITE_P(Chance, CopiesByChance, ::testing::Range(1U, 1U + rounds(8)));

} // namespace
} // namespace holdfast::db
