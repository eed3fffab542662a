// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What lies on the bench: the films that have decals to cut and, of each, its nests, what the maker pinned,
// left out and which roll comes first. It asks core/cutting what is free and legal and paints nothing.
//
// Where laying the decals would keep a hand waiting they are laid in the background. Until then what lay
// there before is shown, without what is gone, and is neither moved nor cut. Another wish begins it again.

#include "app/desk/beside.h"
#include "app/places/cutting_bench/decals_on_garments.h"
#include "app/places/cutting_bench/first_layout.h"
#include "core/cutting/nest.h"
#include "core/shop/films_to_cut.h"

#include <QObject>

#include <map>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace holdfast::app {

// What lies there of one film.
struct FilmOnBench {
    NestWish wish;
    std::optional<RollId> firstRoll; // the maker's own choice
    FilmNests laid;
    Sentence problem; // why nothing can be laid
    std::optional<DecalId> chosen;
    std::vector<std::pair<RollId, FilmArea>> thrownAway; // offcuts not to be kept
    std::vector<std::int64_t> reckonedFrom;              // what the nests were reckoned from
    bool isLaid = false;     // as wished; else it is being laid, or was when another film was chosen
    bool isSearched = false; // a shorter one was looked for, or a hand laid it
    std::uint64_t seed = 1;  // of the next search; another each time it is asked for
    std::optional<FilmNests> withoutPins; // the best known of the same wish without its pins
};

class BenchModel : public QObject {
    Q_OBJECT

public:
    explicit BenchModel(QObject* parent = nullptr);

    // A newer shop. Nests stay where nothing they were made from has changed; pins and decals left out stay
    // where the decal still waits.
    void show(std::shared_ptr<const ReckonedShop> shop);
    const std::shared_ptr<const ReckonedShop>& shop() const { return m_shop; }
    const ShopFacts& facts() const { return m_shop->facts; }

    // ── films ──
    const std::vector<FilmToCut>& films() const { return m_films; }
    int filmAt() const { return m_filmAt; } // -1: none has anything to cut
    void chooseFilm(int at);
    bool chooseFilm(FilmId film);
    const FilmToCut* film() const;
    bool hasGrain() const;
    // The roll that is cut from first: the maker's choice, else the first offered that may be used.
    std::optional<RollId> firstRollOf(const FilmToCut& film) const;

    // ── the chosen film. REQUIRES: there is one ──
    const FilmOnBench& onBench() const;
    const std::vector<Nest>& nests() const { return onBench().laid.nests; }
    bool isBeingLaid() const { return m_laying.isUnderWay(); }
    DecalOnGarment decal(DecalId id) const; // nulls where it is gone
    const Nest* nestOf(DecalId id) const;
    const NestedDecal* lying(DecalId id) const; // null where it is on no roll
    // Where it comes among those alike, from 1, and how many they are.
    std::pair<int, int> amongAlike(DecalId id) const;

    // ── the decal at hand ──
    std::optional<DecalId> chosen() const;
    void choose(DecalId id);
    bool chooseNext(int step); // false after the last

    // ── moving by hand; false where it is not possible ──
    std::optional<DecalPin> freePlace(DecalId id, const DecalPin& wanted) const;
    bool moveTo(DecalId id, const DecalPin& wanted);
    bool nudge(Millimetres along, Millimetres across);
    bool turn();
    bool canBePinned(DecalId id) const; // on the first roll
    bool turnPin();

    // ── wishes ──
    void leaveOut(DecalId id);
    void putBack(DecalId id);
    void putAllBack();
    void setGap(Millimetres gap);
    void setFirstRoll(RollId roll);
    // This roll first, where it may be cut from, and of what waits only these; none named: all.
    void layOnly(std::optional<RollId> roll, std::span<const DecalId> decals);
    bool keepsOffcut(RollId roll, const FilmArea& offcut) const;
    void setKeepsOffcut(RollId roll, const FilmArea& offcut, bool keeps);

    // A better answer to the same wish. Kept where it places more, or as much on less length.
    void take(const FilmNests& found);
    // Where nothing is pinned any more: the best layout remembered from before, if it is better.
    void takeKnown();
    void markSearched();
    void searchOtherwise(); // the next search tries other layouts
    bool isSearched() const { return film() && onBench().isSearched; }
    // Proved: nothing shorter is possible for what lies there now, with its pins. Over several rolls nothing
    // is proved, since another share of the decals might do.
    bool isShortest() const;
    bool hasPins() const { return film() && !onBench().wish.pins.empty(); }
    // By how much the best layout known without the pins is shorter than what lies there; none where it is
    // not, or not as many decals lie on it.
    std::optional<Millimetres> costOfPins() const;
    // That layout is proved the shortest, so that the cost is exact and not only the least it may be.
    bool isCostOfPinsProved() const;

signals:
    void filmsChanged();
    void beingLaid();     // in the background; nested() follows
    void nested();        // laid again from the start
    void moved();         // a decal by hand, or a better nest came
    void chosenChanged(); // the decal at hand
    void offcutsChanged();

private:
    FilmOnBench& own();
    void refreshNests();
    void nestAgain();
    void takeFirst(const FirstLayout& layout);
    void takeAwayWhatIsGone();
    void keepChosen();
    void rememberWithoutPins();
    bool mayComeFirst(RollId roll) const;

    std::shared_ptr<const ReckonedShop> m_shop;
    std::vector<FilmToCut> m_films;
    int m_filmAt = -1;
    std::map<FilmId, FilmOnBench> m_onBench;
    DecalsOnGarments m_decals;
    Beside<FirstLayout> m_laying; // of the chosen film
};

DecalPin placeOf(const NestedDecal& decal);

} // namespace holdfast::app
