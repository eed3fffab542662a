// SPDX-License-Identifier: GPL-3.0-or-later
// How soon nesting answers and how short it packs: `nesting_bench [FOLDER] [--peers FOLDER] [--long-run MS]`.
//
// It packs strips that it makes itself, and those of a folder of benchmark instances where one is given. With
// --peers, a folder that peers/set_up.sh made, the same strips are packed by general-purpose packing
// libraries. It ends with 1 where one of them, or a plain way of filling, is shorter than ours. Prints rows
// of Markdown tables.
//
// Times and the search's budget are the program's own processor time, which other load does not stretch.
//
// With --long-run MS it prints the lines of shop_sets.txt, each set searched for so long, and ends.

#include "tests/bench/strip_instances.h"
#include "tests/core/plain_fills.h"
#include "tests/core/strip_builders.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iostream>
#include <map>
#include <optional>
#include <sstream>

using namespace holdfast;
using namespace holdfast::bench;
using holdfast::strips::manyPieces;
using holdfast::strips::pinsAndPieces;
using holdfast::strips::plainestOf;

namespace {

// Sets of a shop's decals on which the search was tuned, and others.
constexpr unsigned kShopSeed = 11;
constexpr unsigned kOtherShopSeed = 901;
constexpr const char* kOtherShop = "Decals of a shop, seed 901, ";

double processorSeconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) / 1e9;
}

std::string rounded(double value, int places) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", places, value);
    return text;
}

void row(const std::string& what, const std::string& figure, const std::string& note = "") {
    std::cout << "| " << what << " | " << figure << " | " << note << " |" << std::endl;
}

void mustBeRight(const StripTask& task, const StripPacking& packing) {
    const auto fault = faultOf(task, packing);
    if (!fault)
        return;
    std::cerr << "A packing is wrong: " << *fault << '\n';
    std::exit(1);
}

double percentAbove(std::int64_t length, std::int64_t least) {
    return 100.0 * static_cast<double>(length - least) / static_cast<double>(least);
}

std::int64_t shortestOf(const KnownStrip& strip, bool mayTurn) {
    return mayTurn ? strip.shortestTurned : strip.shortest;
}

void firstAnswer(const std::string& name, const StripTask& task) {
    std::vector<double> seconds;
    StripPacking packing;
    for (int time = 0; time < 9; ++time) {
        const double begun = processorSeconds();
        packing = packAtOnce(task).value();
        seconds.push_back(processorSeconds() - begun);
    }
    mustBeRight(task, packing);
    std::ranges::nth_element(seconds, seconds.begin() + 4);
    row("First answer, " + name, rounded(seconds[4] * 1e3, 2) + " ms",
        rounded(percentAbove(packing.length, leastLength(task)), 2) + " % above the least length");
}

// How long it works without asking whether to stop, at the most: from its beginning to its end.
void longestWithoutAsking(const std::string& name, const StripTask& task) {
    const auto longest = [&](const auto& pack) {
        double asked = processorSeconds();
        double most = 0;
        const auto ask = [&] {
            const double now = processorSeconds();
            most = std::max(most, now - asked);
            asked = now;
            return false;
        };
        const StripPacking packing = pack(ask);
        ask();
        mustBeRight(task, packing);
        return rounded(most * 1e3, 2) + " ms";
    };
    row("Longest without asking whether to stop, " + name,
        longest([&](const std::function<bool()>& ask) { return packAtOnce(task, ask).value(); }),
        longest([&](const std::function<bool()>& ask) {
            StripSearch search;
            search.work = 100'000;
            search.shouldStop = ask;
            return packWithin(task, search).value();
        }) + " in a search");
}

StripPacking packedWithin(const StripTask& task, std::chrono::milliseconds budget) {
    StripSearch search;
    search.budget = budget;
    StripPacking packing = packWithin(task, search).value();
    mustBeRight(task, packing);
    return packing;
}

void meanGap(const std::string& name, const std::vector<KnownStrip>& strips, bool mayTurn,
             std::chrono::milliseconds budget) {
    double gaps = 0;
    std::size_t reached = 0;
    for (const KnownStrip& strip : strips) {
        const StripTask task = mayTurn ? turnable(strip.task) : strip.task;
        const StripPacking packing = packedWithin(task, budget);
        gaps += percentAbove(packing.length, strip.shortest);
        reached += packing.length == strip.shortest;
    }
    row("Mean gap, " + name + (mayTurn ? ", with turns" : "") + ", " + std::to_string(budget.count()) +
            " ms each",
        rounded(gaps / static_cast<double>(strips.size()), 3) + " %",
        std::to_string(reached) + " of " + std::to_string(strips.size()) + " at the optimum");
}

void gaps(const std::string& name, const std::vector<KnownStrip>& strips) {
    for (const bool mayTurn : {false, true}) {
        for (const int budget : {100, 1'000})
            meanGap(name, strips, mayTurn, std::chrono::milliseconds{budget});
    }
}

// Where waste cannot be avoided: above the least length, and above the shortest that a long run found.
void gapsOfAShop(const std::string& name, const std::vector<KnownStrip>& sets,
                 const std::map<std::string, LongRun>& longRun, std::chrono::milliseconds budget) {
    for (const bool mayTurn : {false, true}) {
        double aboveLeast = 0;
        double aboveLong = 0;
        std::size_t known = 0;
        for (const KnownStrip& set : sets) {
            const StripTask task = mayTurn ? turnable(set.task) : set.task;
            const std::int64_t length = packedWithin(task, budget).length;
            aboveLeast += percentAbove(length, shortestOf(set, mayTurn));
            const auto found = longRun.find(set.name);
            if (found == longRun.end())
                continue;
            aboveLong += percentAbove(length, mayTurn ? found->second.turned : found->second.fixed);
            ++known;
        }
        row("Decals of a shop, 60 sets, " + name + (mayTurn ? ", with turns, " : ", ") +
                std::to_string(budget.count()) + " ms each",
            rounded(aboveLeast / static_cast<double>(sets.size()), 2) + " %",
            "above the least length" +
                (known == sets.size()
                     ? "; " + rounded(aboveLong / static_cast<double>(known), 2) + " % above the long run"
                     : ""));
    }
}

// One line a set, as in shop_sets.txt.
void printLongRun(unsigned seed, std::chrono::milliseconds budget) {
    for (const KnownStrip& set : decalsOfAShop(seed))
        std::cout << set.name << ' ' << packedWithin(set.task, budget).length << ' '
                  << packedWithin(turnable(set.task), budget).length << std::endl;
}

void writeForPeers(const std::vector<KnownStrip>& strips, const std::filesystem::path& file) {
    std::ofstream out{file};
    out << '[';
    for (std::size_t index = 0; index < strips.size(); ++index) {
        const KnownStrip& strip = strips[index];
        out << (index > 0 ? "," : "") << "{\"name\":\"" << strip.name << "\",\"width\":" << strip.task.width
            << ",\"least\":" << strip.shortest << ",\"leastTurned\":" << strip.shortestTurned
            << ",\"pieces\":[";
        for (std::size_t piece = 0; piece < strip.task.pieces.size(); ++piece)
            out << (piece > 0 ? "," : "") << '[' << strip.task.pieces[piece].across << ','
                << strip.task.pieces[piece].along << ']';
        out << "]}";
    }
    out << "]\n";
}

constexpr std::chrono::milliseconds kBesideOthers{100};

// Strips on which another way of packing was tried, and ours in the time that nesting has at the bench.
class Tally {
public:
    void add(std::int64_t shortest, std::int64_t ours, std::int64_t theirs) {
        ++m_strips;
        m_oursShorter += ours < theirs;
        m_theirsShorter += theirs < ours;
        m_theirGaps += percentAbove(theirs, shortest);
        m_ourGaps += percentAbove(ours, shortest);
    }
    void print(const std::string& who) const {
        const auto count = static_cast<double>(m_strips);
        row(who,
            "mean gap " + rounded(m_theirGaps / count, 2) + " %, ours " + rounded(m_ourGaps / count, 2) +
                " %",
            "ours shorter on " + std::to_string(m_oursShorter) + ", theirs on " +
                std::to_string(m_theirsShorter) + " of " + std::to_string(m_strips));
    }
    bool isNeverLonger() const { return m_theirsShorter == 0; }

private:
    std::size_t m_strips = 0;
    std::size_t m_oursShorter = 0;
    std::size_t m_theirsShorter = 0;
    double m_theirGaps = 0;
    double m_ourGaps = 0;
};

using Lengths = std::map<std::pair<std::string, bool>, std::int64_t>; // by name, and whether they may turn

Lengths ourLengths(const std::vector<KnownStrip>& strips) {
    Lengths ours;
    for (const KnownStrip& strip : strips) {
        for (const bool mayTurn : {false, true})
            ours[{strip.name, mayTurn}] =
                packedWithin(mayTurn ? turnable(strip.task) : strip.task, kBesideOthers).length;
    }
    return ours;
}

// False: a plain way of filling was shorter on some strip.
bool heldAgainstPlainFills(const std::vector<KnownStrip>& strips, const Lengths& ours,
                           const std::string& what) {
    bool isNeverLonger = true;
    for (const bool mayTurn : {false, true}) {
        Tally tally;
        for (const KnownStrip& strip : strips)
            tally.add(shortestOf(strip, mayTurn), ours.at({strip.name, mayTurn}),
                      plainestOf(strip.task, mayTurn));
        tally.print(what + "best of plain fills" + (mayTurn ? ", with turns" : ""));
        isNeverLonger = isNeverLonger && tally.isNeverLonger();
    }
    return isNeverLonger;
}

// False: a library packed some strip shorter than we did.
bool heldAgainstPeers(const std::filesystem::path& folder, const std::vector<KnownStrip>& strips,
                      const Lengths& ours, const std::string& what) {
    const std::filesystem::path input = folder / "strips.json";
    const std::filesystem::path output = folder / "lengths.txt";
    writeForPeers(strips, input);
    const std::string command =
        "node '" + (folder / "pack.mjs").string() + "' <'" + input.string() + "' >'" + output.string() + "'";
    if (std::system(command.c_str()) != 0) {
        std::cerr << "The libraries did not run: " << command << '\n';
        return false;
    }
    std::map<std::string, const KnownStrip*> byName;
    for (const KnownStrip& strip : strips)
        byName[strip.name] = &strip;
    std::map<std::string, Tally> tallies;
    std::ifstream lines{output};
    std::string name, library;
    int turns = 0;
    std::int64_t length = 0;
    while (lines >> name >> library >> turns >> length) {
        const KnownStrip& strip = *byName.at(name);
        const std::int64_t ourLength = ours.at({name, turns != 0});
        const std::int64_t shortest = shortestOf(strip, turns != 0);
        const std::int64_t theirs = length == 0 ? 2 * shortest : length;
        tallies[library + (turns ? ", with turns" : "")].add(shortest, ourLength, theirs);
        if (theirs < ourLength)
            std::cerr << library << " is shorter on " << name << (turns ? " with turns" : "") << ": "
                      << theirs << " to " << ourLength << '\n';
    }
    bool isNeverLonger = true;
    for (const auto& [library_, tally] : tallies) {
        tally.print(what + library_);
        isNeverLonger = isNeverLonger && tally.isNeverLonger();
    }
    return isNeverLonger;
}

} // namespace

int main(int count, char** words) {
    std::optional<std::filesystem::path> folder;
    std::optional<std::filesystem::path> peers;
    std::optional<std::chrono::milliseconds> longRun;
    for (int word = 1; word < count; ++word) {
        if (std::string{words[word]} == "--peers" && word + 1 < count)
            peers = words[++word];
        else if (std::string{words[word]} == "--long-run" && word + 1 < count)
            longRun = std::chrono::milliseconds{std::stoll(words[++word])};
        else
            folder = words[word];
    }
    if (longRun) {
        for (const unsigned seed : {kShopSeed, kOtherShopSeed})
            printLongRun(seed, *longRun);
        return 0;
    }
    for (const std::size_t pieces : {200U, 3'000U, 10'000U}) {
        for (const bool mayTurn : {false, true})
            firstAnswer(std::to_string(pieces) + " pieces" + (mayTurn ? ", with turns" : ""),
                        manyPieces(pieces, mayTurn));
    }
    firstAnswer("1000 pins and 3500 pieces", pinsAndPieces(1'000, 3'500));
    longestWithoutAsking("10000 pieces with turns", manyPieces(10'000, true));
    longestWithoutAsking("1000 pins and 3500 pieces", pinsAndPieces(1'000, 3'500));
    const std::vector<KnownStrip> made = stripsOfSmallNumbers();
    const std::vector<KnownStrip> like = stripsLikeThePublished();
    gaps(std::to_string(like.size()) + " strips cut up as those of C1 to C7", like);
    gaps("28 strips cut up anywhere, slivers too", made);
    gaps("20 strips cut up, large numbers", stripsOfLargeNumbers());
    const std::vector<KnownStrip> shop = decalsOfAShop(kShopSeed);
    const std::vector<KnownStrip> otherShop = decalsOfAShop(kOtherShopSeed);
    const auto found = longRuns(std::filesystem::path{__FILE__}.parent_path() / "shop_sets.txt");
    for (const std::chrono::milliseconds budget :
         {std::chrono::milliseconds{100}, std::chrono::milliseconds{1'000}}) {
        gapsOfAShop("seed 11", shop, found, budget);
        gapsOfAShop("seed 901", otherShop, found, budget);
    }
    std::vector<KnownStrip> read;
    if (folder)
        read = stripsIn(*folder);
    if (!read.empty())
        gaps(std::to_string(read.size()) + " strips of the folder", read);
    const std::vector<KnownStrip>& known = read.empty() ? made : read;
    bool isNeverLonger = true;
    for (const auto& [strips, what] : {std::pair{&known, ""}, std::pair{&otherShop, kOtherShop}}) {
        const Lengths ours = ourLengths(*strips);
        isNeverLonger = heldAgainstPlainFills(*strips, ours, what) && isNeverLonger;
        if (peers)
            isNeverLonger = heldAgainstPeers(*peers, *strips, ours, what) && isNeverLonger;
    }
    return isNeverLonger ? 0 : 1;
}
