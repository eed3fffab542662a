// SPDX-License-Identifier: GPL-3.0-or-later
// The order on the table as a value: what a choice does to it, what is kept of it, what it comes to.

#include "app/desk/formats.h"
#include "app/places/fair_table/draft_note.h"
#include "app/places/fair_table/fair_table_model.h"
#include "app/places/fair_table/stage_scale.h"
#include "app/theme/drawings.h"
#include "core/garments/placement_presets.h"
#include "db/actions/film_actions.h"
#include "db/actions/shop_actions.h"
#include "tests/app/shop_fixture.h"

#include <QTest>

#include <random>

namespace holdfast::app::test {

namespace {

class FairTableDraft : public ShopFixture {
protected:
    const BlankStyle& styleAt(BlankStyleId style) { return desk().shop()->facts.styles.at(style); }

    // Tee, M, Moss, nothing on it yet.
    TableDraft aTee(const UsualShop& usual) {
        TableDraft draft;
        chooseStyle(draft, styleAt(usual.style));
        draft.garment().size = "M";
        draft.garment().colour = usual.moss;
        draft.nextFilm = usual.film;
        return draft;
    }
    TableSums reckon(const TableDraft& draft) { return TableReckoner{}.reckon(draft, desk().shop()); }

    // Anything a maker might do, by chance.
    void doSomething(TableDraft& draft, const UsualShop& usual, std::mt19937& chance) {
        const auto upTo = [&](int most) { return static_cast<int>(chance() % static_cast<unsigned>(most)); };
        const BlankStyle* style = &styleAt(usual.style);
        const int what = upTo(16);
        if ((what == 1 || what == 2) && !draft.garment().style.isSet())
            return; // the table offers neither before there is a style
        switch (what) {
        case 0:
            return chooseStyle(draft, *style);
        case 1:
            draft.garment().size = style->sizes[static_cast<std::size_t>(upTo(4))];
            return;
        case 2:
            draft.garment().colour = style->colours[static_cast<std::size_t>(upTo(2))].id;
            return;
        case 3:
            return chooseArtwork(draft, style, upTo(2) ? "heron" : "no such drawing");
        case 4:
            return typeWords(draft, style, std::string(static_cast<std::size_t>(upTo(9)), 'm'));
        case 5:
            return chooseFace(draft, upTo(2) ? Face::Plain : Face::BookSerif);
        case 6:
            return choosePlacement(draft, style, static_cast<Placement>(upTo(5)));
        case 7:
            return chooseFilm(draft, upTo(2) ? usual.film : FilmId{}, upTo(2));
        case 8:
            return moveDecal(draft, Millimetres{upTo(5000) - 1000}, Millimetres{upTo(5000) - 2500});
        case 9:
            return widenDecal(draft, Millimetres{upTo(6000) - 1000});
        case 10:
            return beginDecal(draft);
        case 11:
            if (draft.decalAt)
                removeDecal(draft, *draft.decalAt);
            return;
        case 12:
            if (draft.decalAt)
                raiseDecal(draft, *draft.decalAt, upTo(2) ? 1 : -1);
            return;
        case 13:
            return addGarment(draft);
        case 14:
            return removeGarment(draft,
                                 static_cast<std::size_t>(upTo(static_cast<int>(draft.garments.size()))));
        case 15:
            draft.garment().copies = 1 + upTo(20);
            return typeName(draft, "Žofia");
        }
    }
};

} // namespace

TEST_F(FairTableDraft, ArtworkIsAsWideAsUsualAndKeepsItsShape) {
    const UsualShop usual = stockUsualShop();
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &styleAt(usual.style), "heron");
    const DecalDraft& heron = draft.decal()->decal;
    const PlacementPreset chest = *presetFor("tee", Placement::Chest);
    EXPECT_EQ(heron.width, chest.wide);
    EXPECT_EQ(heron.below, chest.below);
    EXPECT_EQ(heron.film, usual.film);
    const double aspect = static_cast<double>(heron.width.value) / static_cast<double>(heron.height.value);
    EXPECT_NEAR(aspect, artworkAspect(QStringLiteral("heron")), 0.02);
}

TEST_F(FairTableDraft, WordsStandBelowTheArtworkAndGrowWithTheirLetters) {
    const UsualShop usual = stockUsualShop();
    const BlankStyle& style = styleAt(usual.style);
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &style, "heron");
    const DecalDraft heron = draft.decal()->decal;
    typeWords(draft, &style, "Ju");
    const DecalDraft two = draft.decal()->decal;
    EXPECT_GT(two.below, heron.below + heron.height);
    typeWords(draft, &style, "Juno");
    EXPECT_EQ(draft.garment().decals.size(), 2u);
    EXPECT_GT(draft.decal()->decal.width, two.width);
    typeWords(draft, &style, std::string(60, 'm'));
    EXPECT_LE(draft.decal()->decal.width, presetFor("tee", Placement::Chest)->widest);
    typeWords(draft, &style, "Ju");
    EXPECT_EQ(draft.decal()->decal, two); // small letters were for the long words alone
    typeWords(draft, &style, "");
    EXPECT_EQ(draft.garment().decals.size(), 1u);
    EXPECT_EQ(draft.decal()->decal, heron);
}

TEST_F(FairTableDraft, AnotherTileChangesTheArtworkAndAnotherDecalIsAskedFor) {
    const UsualShop usual = stockUsualShop();
    const BlankStyle& style = styleAt(usual.style);
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &style, "heron");
    typeWords(draft, &style, "Juno");
    chooseArtwork(draft, &style, "tern"); // while the words are at hand
    EXPECT_EQ(draft.garment().decals.size(), 2u);
    EXPECT_EQ(draft.garment().decals[0].decal.content, DecalContent{Artwork{"tern"}});
    beginDecal(draft);
    EXPECT_EQ(artworkShown(draft), nullptr);
    chooseArtwork(draft, &style, "boat");
    EXPECT_EQ(draft.garment().decals.size(), 3u);
    for (int more = 0; more < 20; ++more) {
        beginDecal(draft);
        chooseArtwork(draft, &style, "fish");
    }
    EXPECT_EQ(draft.garment().decals.size(), kMostDecalsOnGarment);
}

TEST_F(FairTableDraft, AnotherStyleDropsWhatItDoesNotHaveAndMovesTheDecals) {
    const UsualShop usual = stockUsualShop();
    const BlankStyleId tote = addStyle("Tote", [](BlankStyle& style) {
        style.outline = "tote";
        style.sizes = {"One"};
        style.colours.resize(1);
    });
    TableDraft draft = aTee(usual);
    choosePlacement(draft, &styleAt(usual.style), Placement::Sleeve);
    chooseArtwork(draft, &styleAt(usual.style), "heron");
    chooseStyle(draft, styleAt(tote));
    EXPECT_EQ(draft.garment().size, "One");
    EXPECT_EQ(draft.garment().colour, styleAt(tote).colours[0].id);
    const DecalDraft& heron = draft.decal()->decal;
    EXPECT_EQ(heron.placement, Placement::Front);
    EXPECT_LE(heron.width, presetFor("tote", Placement::Front)->widest);
    EXPECT_LE(heron.height, presetFor("tote", Placement::Front)->tallest);
}

TEST_F(FairTableDraft, LayersRiseOnlyWhereDecalsLieOverEachOther) {
    const UsualShop usual = stockUsualShop();
    const BlankStyle& style = styleAt(usual.style);
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &style, "heron");
    typeWords(draft, &style, "Juno");
    EXPECT_EQ(garmentDraft(draft.garment()).decals[1].layer, 1);
    moveDecal(draft, 150_mm, 0_mm);
    EXPECT_EQ(garmentDraft(draft.garment()).decals[1].layer, 2);
    raiseDecal(draft, 1, -1);
    EXPECT_TRUE(std::holds_alternative<Wording>(garmentDraft(draft.garment()).decals[0].content));
    EXPECT_EQ(garmentDraft(draft.garment()).decals[0].layer, 1);
    EXPECT_EQ(garmentDraft(draft.garment()).decals[1].layer, 2);
}

TEST_F(FairTableDraft, PartsAddUpToThePriceAndCopiesToTheTotal) {
    const UsualShop usual = stockUsualShop();
    const BlankStyle& style = styleAt(usual.style);
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &style, "heron");
    typeWords(draft, &style, "Juno");
    draft.garment().copies = 12;
    const TableSums sums = reckon(draft);
    const GarmentSums& one = sums.garments[0];
    ASSERT_EQ(one.parts.size(), 3u);
    EXPECT_EQ(one.parts[0] + one.parts[1] + one.parts[2], one.price);
    EXPECT_EQ(sums.total, one.price * 12);
    EXPECT_EQ(sums.floor, one.cost.total() * 12);
    EXPECT_LT(sums.floor, sums.total);
    EXPECT_EQ(one.price.minor % desk().shop()->facts.settings.pricePoint.minor, 0);
    EXPECT_EQ(orderOf(draft, sums, false).total(), sums.total);
    EXPECT_EQ(orderOf(draft, sums, false).garments.size(), 12u);
}

TEST_F(FairTableDraft, TheShopsShareIsAskedForAndNeverPaidUnasked) {
    const UsualShop usual = stockUsualShop();
    ShopSettings settings = desk().shop()->facts.settings;
    settings.depositPercent = 30;
    settings.depositHolds = true;
    valueOf(db::changeSettings(file(), settings));
    FairTableModel model(desk());
    model.edit(Step::Choice, [&](TableDraft& draft) { chooseStyle(draft, styleAt(usual.style)); });
    EXPECT_EQ(model.sums().depositAsked, depositDue(model.sums().total, settings));
    EXPECT_EQ(model.sums().deposit, Money{});
    const auto isShortSaid = [&] {
        return std::ranges::any_of(model.messages(), [](const TableMessage& message) {
            return message.lead.startsWith(QStringLiteral("Deposit below")) && message.tone == Tone::Held &&
                   !message.leavesDayOpen.isEmpty();
        });
    };
    EXPECT_TRUE(isShortSaid());
    model.edit(Step::Deposit, [&](TableDraft& draft) {
        draft.paidNow = plainAmount(model.sums().depositAsked, settings.currency);
    });
    EXPECT_EQ(model.sums().deposit, model.sums().depositAsked);
    EXPECT_FALSE(isShortSaid());
}

TEST_F(FairTableDraft, AnAmountThatIsTooMuchForAnOrderMadeSmallerIsSaid) {
    const UsualShop usual = stockUsualShop();
    TableDraft draft = aTee(usual);
    draft.garment().copies = 3;
    draft.paidNow = plainAmount(reckon(draft).total, desk().shop()->facts.settings.currency);
    EXPECT_FALSE(reckon(draft).depositError.has_value());
    draft.garment().copies = 2;
    EXPECT_TRUE(reckon(draft).depositError.has_value());
    EXPECT_EQ(reckon(draft).deposit, Money{});
}

TEST_F(FairTableDraft, CopiesTakeTheRollsInTurnUntilTheyAreTooShort) {
    const UsualShop usual = stockUsualShop();
    const FilmId film = addFilm("Gorse");
    const RollId first = receiveRoll(film, usual.place, 1000_mm);
    receiveRoll(film, usual.place, 2000_mm);
    TableDraft draft = aTee(usual);
    draft.nextFilm = film;
    chooseArtwork(draft, &styleAt(usual.style), "heron");
    EXPECT_EQ(reckon(draft).rolls[0][0].roll->id, first);
    draft.garment().copies = 4;
    EXPECT_EQ(reckon(draft).rolls[0][0].lack, RollLack::None);
    draft.garment().copies = 40;
    EXPECT_EQ(reckon(draft).rolls[0][0].lack, RollLack::TooShort);
}

TEST_F(FairTableDraft, TheFilmOfTheFirstDecalIsOneThatFits) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; }), usual.place, 50'000_mm);
    FairTableModel model(desk());
    model.edit(Step::Choice, [&](TableDraft& draft) { chooseStyle(draft, styleAt(usual.style)); });
    model.editWithFilm(Step::Choice,
                       [&](TableDraft& draft) { chooseArtwork(draft, model.style(), "heron"); });
    EXPECT_EQ(model.draft().decal()->decal.film, usual.film);
}

TEST_F(FairTableDraft, TypingIsOneStepToUndoAndChoicesAreOneEach) {
    const UsualShop usual = stockUsualShop();
    FairTableModel model(desk());
    const TableDraft empty = model.draft();
    model.edit(Step::Choice, [&](TableDraft& draft) { chooseStyle(draft, styleAt(usual.style)); });
    const TableDraft styled = model.draft();
    for (const char* typed : {"O", "Od", "Odi"})
        model.edit(Step::Name, [&](TableDraft& draft) { typeName(draft, typed); });
    model.undo();
    EXPECT_EQ(model.draft(), styled);
    model.redo();
    EXPECT_EQ(model.draft().customerName, "Odi");
    model.undo();
    model.undo();
    EXPECT_EQ(model.draft(), empty);
    EXPECT_FALSE(model.canUndo());
    model.undo();
    EXPECT_EQ(model.draft(), empty);
}

TEST_F(FairTableDraft, WhateverIsDoneComesBackStepByStepAndOutOfItsNote) {
    const UsualShop usual = stockUsualShop();
    std::mt19937 chance(426);
    for (int order = 0; order < 30; ++order) {
        FairTableModel model(desk());
        model.clear();
        std::vector<TableDraft> before;
        for (int step = 0; step < 40; ++step) {
            const TableDraft was = model.draft();
            model.edit(Step::Choice, [&](TableDraft& draft) { doSomething(draft, usual, chance); });
            if (model.draft() != was)
                before.push_back(was);
            const auto kept = draftFromNote(noteOf(model.draft()), desk().shop()->facts);
            ASSERT_TRUE(kept.ok());
            ASSERT_EQ(*kept, model.draft());
            ASSERT_EQ(model.sums().garments.size(), model.draft().garments.size());
            // Whatever is typed, taking it is refused in words or goes well.
            if (const auto missing = model.missing(false)) {
                ASSERT_FALSE(missing->what.isEmpty());
            }
        }
        for (; !before.empty(); before.pop_back()) {
            model.undo();
            ASSERT_EQ(model.draft(), before.back());
        }
    }
}

TEST_F(FairTableDraft, ADamagedNoteIsRefusedWholeWhateverIsWrongWithIt) {
    const UsualShop usual = stockUsualShop();
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &styleAt(usual.style), "heron");
    typeWords(draft, &styleAt(usual.style), "Juno");
    draft.paidNow = "5";
    draft.paidHow = PaidHow::Cash;
    const QByteArray note = noteOf(draft);
    const ShopFacts& facts = desk().shop()->facts;
    for (qsizetype length = 0; length < note.size(); ++length)
        EXPECT_FALSE(draftFromNote(note.left(length), facts).ok()) << length;
    const auto refuses = [&](const char* right, const char* wrong) {
        QByteArray changed = note;
        ASSERT_TRUE(changed.contains(right)) << right;
        changed.replace(right, wrong);
        EXPECT_FALSE(draftFromNote(changed, facts).ok()) << wrong;
    };
    refuses("\"version\":4", "\"version\":5");
    refuses("\"garmentAt\":0", "\"garmentAt\":7");
    refuses("\"garmentAt\":0", "\"garmentAt\":-1");
    refuses("\"decalAt\":1", "\"decalAt\":2");
    refuses("\"copies\":1", "\"copies\":0");
    refuses("\"copies\":1", "\"copies\":1e300");
    refuses("\"chest\"", "\"elbow\"");
    refuses("\"cash\"", "3");
    std::mt19937 chance(7);
    for (int flip = 0; flip < 2000; ++flip) {
        QByteArray changed = note;
        changed[static_cast<qsizetype>(chance() % static_cast<unsigned>(note.size()))] =
            static_cast<char>(chance() % 256);
        const auto read = draftFromNote(changed, facts);
        if (read.ok())
            reckon(*read); // a sound one is one that can be worked with
    }
}

TEST_F(FairTableDraft, WhatTheShopDoesNotKnowIsLeftOutOfANote) {
    const UsualShop usual = stockUsualShop();
    TableDraft draft = aTee(usual);
    chooseArtwork(draft, &styleAt(usual.style), "heron");
    const auto read = draftFromNote(noteOf(draft), ShopFacts{});
    ASSERT_TRUE(read.ok());
    EXPECT_FALSE(read->garment().style.isSet());
    EXPECT_TRUE(read->garment().size.empty());
    EXPECT_FALSE(read->garment().decals[0].decal.film.isSet());
}

TEST(StageScale, MillimetresGoToPixelsAndBackAtTheSizesScale) {
    const QRectF box(10, 20, 400, 380);
    const StageScale medium(box, QStringLiteral("tee"), QStringLiteral("M"), Side::Front);
    const QRectF rect = medium.rectOf(75_mm, 100_mm, 280_mm, 200_mm);
    EXPECT_EQ(medium.belowAt(rect.top()), 75_mm);
    EXPECT_EQ(medium.asideAt(rect.center().x()), 100_mm);
    EXPECT_EQ(medium.lengthOf(rect.width()), 280_mm);
    EXPECT_GT(rect.center().x(), medium.seam().x()); // the wearer's left is at our right
    EXPECT_TRUE(box.adjusted(-1, -1, 1, 1).contains(medium.garment()));

    const StageScale large(box, QStringLiteral("tee"), QStringLiteral("2XL"), Side::Front);
    EXPECT_LT(large.pixelsPerMillimetre(), medium.pixelsPerMillimetre());
    const StageScale back(box, QStringLiteral("tee"), QStringLiteral("M"), Side::Back);
    EXPECT_LT(back.rectOf(75_mm, 100_mm, 50_mm, 50_mm).center().x(), back.seam().x());
    EXPECT_EQ(back.asideAt(back.rectOf(75_mm, 100_mm, 50_mm, 50_mm).center().x()), 100_mm);
}

TEST(StageScale, EveryOutlineTakesItsUsualDecalOnItsCloth) {
    for (const QString& outline : garmentOutlines()) {
        const StageScale scale({0, 0, 330, 330}, outline, QStringLiteral("M"), Side::Front);
        for (const PlacementPreset& preset : presetsFor(outline.toStdString())) {
            const QRectF decal = scale.rectOf(preset.below, preset.aside, preset.wide, 20_mm);
            EXPECT_TRUE(scale.garment().adjusted(-4, 0, 4, 0).contains(decal))
                << outline.toStdString() << " " << placementName(preset.placement);
        }
    }
}

} // namespace holdfast::app::test
