// SPDX-License-Identifier: GPL-3.0-or-later
// The search for a shorter nest, by itself and when it is asked for.
#include "app/places/cutting_bench/cutting_bench_place.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_panel.h"

namespace holdfast::app {

namespace {

// Pieces that a search lays, again and again: some two and five seconds on an idle machine. Work is counted
// and not time, so that the same wish gives the same nest on any machine, however busy.
constexpr std::uint64_t kSearchByItself = 10'000'000;
constexpr std::uint64_t kSearchAsked = 25'000'000;

std::optional<std::uint64_t>& searchRounds() {
    static std::optional<std::uint64_t> rounds;
    return rounds;
}

Millimetres lengthLaid(const BenchModel& model) {
    Millimetres length;
    for (const Nest& nest : model.nests())
        length += nest.length;
    return length;
}

} // namespace

void CuttingBenchPlace::setSearchRounds(std::optional<std::uint64_t> rounds) {
    searchRounds() = rounds;
}

void CuttingBenchPlace::searchByItself() {
    if (!m_model.film() || m_model.isBeingLaid() || m_search.isSearching() || m_writing.isBusy() ||
        m_model.isSearched() || m_model.isShortest())
        return;
    m_wasAsked = false;
    m_search.begin(m_model.shop(), *m_model.film(), m_model.onBench().wish, howToSearch(kSearchByItself));
}

StripSearch CuttingBenchPlace::howToSearch(std::uint64_t work) const {
    StripSearch how;
    how.work = work;
    how.rounds = searchRounds();
    how.seed = m_model.onBench().seed;
    return how;
}

void CuttingBenchPlace::searchAgain() {
    if (!m_model.film() || m_model.nests().empty() || m_model.isBeingLaid())
        return;
    m_before = lengthLaid(m_model);
    m_model.takeKnown();
    if (m_model.isShortest()) {
        sayOutcome();
        return;
    }
    m_model.searchOtherwise();
    m_search.begin(m_model.shop(), *m_model.film(), m_model.onBench().wish, howToSearch(kSearchAsked));
    m_wasAsked = true;
}

void CuttingBenchPlace::searchIsOver() {
    m_model.markSearched();
    m_panel->showFigures();
    if (m_wasAsked)
        sayOutcome();
}

void CuttingBenchPlace::sayOutcome() {
    const Millimetres now = lengthLaid(m_model);
    QStringList said;
    if (now < m_before)
        said.append(tr("Nested again: %1 shorter.").arg(millimetres(m_before - now)));
    if (m_model.isShortest())
        said.append(m_model.hasPins() ? tr("Nothing shorter is possible with what is pinned.")
                                      : tr("This is the shortest layout possible."));
    else if (said.isEmpty())
        said.append(tr("No shorter layout was found."));
    desk().say(said.join(u' '));
}

} // namespace holdfast::app
