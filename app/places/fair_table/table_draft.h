// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The order on the fair table while it is typed: what OrderDraft needs, and next to it where the maker is
// (which garment, which decal), choices not made yet, and copies of a garment. A value; every step of the
// maker is one of the functions below, so that undo is keeping the value before it.

#include "core/facts/shop_facts.h"
#include "core/orders/decal_on_cloth.h"
#include "core/orders/order_draft.h"

#include <QString>

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

struct TableDecal {
    DecalDraft decal;           // its layer is reckoned, see layersOf()
    bool isSizedByHand = false; // keeps its height when its words change
    bool isMovedByHand = false; // keeps its place when the garment gets another size

    bool operator==(const TableDecal&) const = default;
};

struct TableGarment {
    BlankStyleId style; // not set: not chosen yet; so are size and colour
    std::string size;
    ColourId colour;
    int copies = 1;                 // 1 to kMostCopies
    std::vector<TableDecal> decals; // what lies below comes first
    // Of an order that was taken: under which id the first copy was; and whether that, pressed, is made once
    // more.
    std::optional<GarmentId> taken{};
    bool isMadeAgain = false;
    std::optional<Money> priceByHand{}; // of one; none: as the shop makes its prices

    bool isBlankChosen() const { return style.isSet() && !size.empty() && colour.isSet(); }
    bool operator==(const TableGarment&) const = default;
};

struct OpenedOrder;

struct TableDraft {
    std::vector<TableGarment> garments{TableGarment{}}; // never empty
    std::size_t garmentAt = 0;                          // the one being worked on
    std::optional<std::size_t> decalAt;                 // none: the garment itself is at hand
    bool isAdding = false;                              // what is chosen next becomes a decal of its own
    std::optional<Placement> nextPlacement;             // where a new decal goes; none: the usual one
    FilmId nextFilm;                                    // what a new decal is cut from
    Face nextFace = Face::BookSerif;

    std::optional<CustomerId> customer;
    std::string customerName;
    std::string customerPhone;
    std::string knownPhone; // of the chosen customer, as the shop has it; another one typed is noted there
    std::string paidNow;    // as typed; empty: nothing
    std::optional<PaidHow> paidHow; // asked of each customer
    std::string note;

    std::vector<BillLine> lines; // besides the garments, that the maker wrote or were taken with it
    bool isForManyOff = false;   // what follows from a rule of the shop is left off
    bool isRushOff = false;
    std::optional<LocalDate> wantedOn; // the day that the customer asks for

    std::shared_ptr<const OpenedOrder> opened; // an order that was taken, to be changed; null: a new one

    // Nothing of an order is there yet; film and lettering kept for the next customer do not count.
    bool isUntouched() const;
    TableGarment& garment() { return garments[garmentAt]; }
    const TableGarment& garment() const { return garments[garmentAt]; }
    const TableDecal* decal() const { return decalAt ? &garment().decals[*decalAt] : nullptr; }
    bool operator==(const TableDraft&) const = default;
};

inline constexpr int kMostCopies = 200; // as many as an order may have garments
inline constexpr std::size_t kMostDecalsOnGarment = 12;

// A new order at this table: film and lettering stay as they were.
TableDraft nextDraft(const TableDraft& before);

// ── what the maker does ───────────────────────────────────────────────────────────────────────────────────
// Choices that the chosen style does not have are dropped; decals are moved to the new garment's own
// measures.
void chooseStyle(TableDraft& draft, const BlankStyle& style);

// Decals that nobody moved or sized go to where they usually lie on that size.
void chooseSize(TableDraft& draft, const BlankStyle* style, const std::string& size);

// Artwork and words go to the decal worked on where it is of that kind; else to the first of that kind in the
// same placement (on the whole garment where no decal is worked on); else they become a new decal.
void chooseArtwork(TableDraft& draft, const BlankStyle* style, const std::string& artwork);
void typeWords(TableDraft& draft, const BlankStyle* style, const std::string& words); // empty takes them away
void chooseFace(TableDraft& draft, Face face);
void choosePlacement(TableDraft& draft, const BlankStyle* style, Placement placement);
// The whole garment where all its decals are of one film and `isAlone` is not asked; else the decal worked
// on.
void chooseFilm(TableDraft& draft, FilmId film, bool isAlone);
bool filmGoesToAll(const TableDraft& draft);

void beginDecal(TableDraft& draft); // the next artwork or words are another decal
void moveDecal(TableDraft& draft, Millimetres below, Millimetres aside); // kept within reach of the garment
void takeSpot(TableDraft& draft, std::size_t garment, std::size_t decal, const DecalSpot& spot);
// Its height follows: artwork and words keep their shape. The upper edge and the middle stay where they are.
void widenDecal(TableDraft& draft, Millimetres width);
void removeDecal(TableDraft& draft, std::size_t decal);
void raiseDecal(TableDraft& draft, std::size_t decal, int by); // among what lies over each other
void laySwapped(TableDraft& draft, std::size_t decal,
                std::size_t other); // over what it lay under, or under it

void chooseCustomer(TableDraft& draft, const Customer& customer);
void typeName(TableDraft& draft, const std::string& name); // another name is another customer
void addGarment(TableDraft& draft);
void removeGarment(TableDraft& draft, std::size_t garment); // the last one is emptied instead

// ── what follows from it ──────────────────────────────────────────────────────────────────────────────────
// The words shown in the words field, and the artwork marked among the tiles.
const TableDecal* wordsShown(const TableDraft& draft);
const TableDecal* artworkShown(const TableDraft& draft);
Placement placementShown(const TableDraft& draft, const BlankStyle* style);
// What shares some of its cloth with the decal at hand: the next over it, else the next under it.
std::optional<std::size_t> overlappedBy(const TableDraft& draft);

// Width over height, of artwork and of words as they are cut.
double aspectOf(const DecalContent& content);

// The garment as the order keeps it, once a style is chosen: layers are 1 but for what lies over another.
GarmentDraft garmentDraft(const TableGarment& garment);

} // namespace holdfast::app
