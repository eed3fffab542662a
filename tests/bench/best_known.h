// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The least weighted lateness ever found for busy days, or weighted tardiness for drawn instances of one
// machine, kept in a text file: a line for each with the seed of the set, which day (presses-garments-number)
// or kind of instance, the lateness, in seconds for days, and the seconds of the processor that the search
// which found it took.

#include <filesystem>
#include <fstream>
#include <limits>
#include <map>
#include <string>
#include <utility>

namespace holdfast::bench {

class BestKnown {
public:
    explicit BestKnown(std::filesystem::path file)
        : m_file(std::move(file)) {
        read();
    }

    // None known: without bounds.
    double of(unsigned seed, const std::string& day) const {
        const auto found = m_known.find({seed, day});
        return found == m_known.end() ? std::numeric_limits<double>::infinity() : found->second.lateness;
    }

    // Written down at once if it is better.
    void hear(unsigned seed, const std::string& day, double lateness, double seconds) {
        if (lateness >= of(seed, day))
            return;
        read(); // another run may have written meanwhile
        if (lateness < of(seed, day))
            m_known[{seed, day}] = {lateness, seconds};
        std::ofstream out{m_file};
        out << "# seed day lateness seconds; see best_known.h\n";
        out.precision(12);
        for (const auto& [of, entry] : m_known)
            out << of.first << ' ' << of.second << ' ' << entry.lateness << ' ' << entry.seconds << '\n';
    }

private:
    struct Entry {
        double lateness = 0;
        double seconds = 0;
    };

    void read() {
        std::ifstream in{m_file};
        in.ignore(std::numeric_limits<std::streamsize>::max(), '\n');
        unsigned seed = 0;
        std::string day;
        Entry entry;
        while (in >> seed >> day >> entry.lateness >> entry.seconds) {
            const auto [known, isNew] = m_known.try_emplace({seed, day}, entry);
            if (!isNew && entry.lateness < known->second.lateness)
                known->second = entry;
        }
    }

    std::filesystem::path m_file;
    std::map<std::pair<unsigned, std::string>, Entry> m_known;
};

} // namespace holdfast::bench
