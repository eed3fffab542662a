// SPDX-License-Identifier: GPL-3.0-or-later
// What the papers say, read back with tools that know nothing of them: pdfinfo and
// pdftotext (poppler), zbarimg (zbar, a reader of ISO/IEC 18004 codes), QtSvg.

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/papers/paper_making.h"
#include "core/shop/care_of_garment.h"
#include "core/trade/paper_code.h"
#include "tests/app/papers_fixture.h"

#include <QRegularExpression>

namespace holdfast::app::test {
namespace {

const std::string kLongestName = "Überlangärmelstrickjackenträgerinnenvereinsfestausstattung";

using Papers = PapersFixture;

int countOf(const QString& text, const QString& part) {
    return static_cast<int>(text.count(part));
}

// ── claim ticket ──────────────────────────────────────────────────────────────────────────────────────

TEST_F(Papers, TicketSaysDayLinesPaidAndToPay) {
    change([](ShopSettings& settings) {
        settings.shopName = "Løft & Hem";
        settings.fairName = "Saltmarsh Makers’ Market";
        settings.collectAt = "The Net Loft, 4 Creek Lane";
    });
    const auto usual = stockUsualShop();
    auto draft = anOrder({aGarment(usual)}, "Bronagh Tully");
    draft.deposit = Money{1000};
    const auto order = valueOf(db::takeOrder(file(), draft, now())).id;
    const Order& taken = shop().facts.orders.at(order);
    const QString text = textOf({claimTicket(shop(), order)});
    for (const QString& said :
         {QString::number(taken.number), QStringLiteral("Løft & Hem"),
          QStringLiteral("Saltmarsh Makers’ Market"), QStringLiteral("Ready ") + day(dateOf(taken.promised)),
          QStringLiteral("from %1").arg(clock(taken.promised)), QStringLiteral("Tee, M, Moss"),
          moneyBare(taken.total, shop().facts.settings.currency), QStringLiteral("10.00"),
          QStringLiteral("To pay on collecting"), money(taken.owed(), shop().facts.settings.currency),
          QStringLiteral("The Net Loft, 4 Creek Lane"), QStringLiteral("Bronagh T.")})
        EXPECT_TRUE(text.contains(said)) << said.toStdString() << "\n" << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("Tully"))); // others read the stub
}

TEST_F(Papers, TicketTellsNoDayWhileAHoldLeavesItOpen) {
    const auto usual = stockUsualShop();
    const BlankStyleId bodysuit =
        addStyle("Bodysuit", [](BlankStyle& style) { style.label->stretch = Stretch::High; });
    auto garment = aGarment(usual);
    garment.style = bodysuit;
    garment.colour = coloursOf(bodysuit).front().id;
    const auto order = takeOrder({garment}).id;
    const QString text = textOf({claimTicket(shop(), order)});
    EXPECT_TRUE(text.contains(QStringLiteral("No day yet"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Stretches more than the film: choose another film first.")));
    EXPECT_FALSE(text.contains(QStringLiteral("Ready ")));
    const QString promised = day(dateOf(shop().facts.orders.at(order).promised));
    EXPECT_FALSE(text.contains(promised));
    const QString tag = textOf({bagTag(shop(), garmentsOf(order).front())});
    EXPECT_TRUE(tag.contains(QStringLiteral("no day yet"))) << tag.toStdString();
    EXPECT_FALSE(tag.contains(promised));
}

TEST_F(Papers, TicketOfWhatIsPaidOrQuotedSaysSo) {
    const auto usual = stockUsualShop();
    auto draft = anOrder({aGarment(usual)});
    draft.deposit = draft.garments.front().price;
    const auto paid = valueOf(db::takeOrder(file(), draft, now())).id;
    EXPECT_TRUE(textOf({claimTicket(shop(), paid)}).contains(QStringLiteral("Paid in full")));
    draft.deposit = Money{};
    draft.isQuotation = true;
    const auto quoted = valueOf(db::takeOrder(file(), draft, now())).id;
    const QString text = textOf({claimTicket(shop(), quoted)});
    EXPECT_TRUE(text.contains(QStringLiteral("Would be ready")));
    EXPECT_TRUE(text.contains(QStringLiteral("a quotation, not an order yet")));
}

TEST_F(Papers, TicketOfTwelveGarmentsHasEveryPriceAndTheTotal) {
    const auto usual = stockUsualShop();
    auto garments = manyGarments(usual, 12);
    for (std::size_t at = 0; at < garments.size(); ++at)
        garments[at].price = Money{2011 + 100 * static_cast<std::int64_t>(at)};
    const auto order = takeOrder(garments).id;
    const QString text = textOf({claimTicket(shop(), order)});
    for (std::size_t at = 0; at < garments.size(); ++at)
        EXPECT_TRUE(text.contains(moneyBare(garments[at].price, shop().facts.settings.currency))) << at;
    EXPECT_TRUE(
        text.contains(moneyBare(shop().facts.orders.at(order).total, shop().facts.settings.currency)));
    EXPECT_TRUE(text.contains(QStringLiteral("12 garments")));
}

TEST_F(Papers, TicketOfMoreSumsUpWhatHasNoLine) {
    const auto usual = stockUsualShop();
    auto garments = manyGarments(usual, 15);
    for (std::size_t at = 0; at < garments.size(); ++at) {
        garments[at].price = Money{2000};
        garments[at].decals.front().content = Wording{"Crew " + std::to_string(at), Face::Plain};
    }
    const auto order = takeOrder(garments).id;
    const QString text = textOf({claimTicket(shop(), order)});
    EXPECT_TRUE(text.contains(QStringLiteral("and 4 more garments")));
    EXPECT_TRUE(text.contains(QStringLiteral("80.00")));
    EXPECT_TRUE(text.contains(QStringLiteral("300.00")));
}

TEST_F(Papers, TicketGathersGarmentsThatAreAlike) {
    const auto usual = stockUsualShop();
    auto garments = manyGarments(usual, 14);
    for (GarmentDraft& garment : garments)
        garment.price = Money{2000};
    garments[4].price = Money{2350};
    const auto order = takeOrder(garments).id;
    const QString text = textOf({claimTicket(shop(), order)}).simplified();
    EXPECT_TRUE(text.contains(QStringLiteral("a–d, f–n 13 × Tee, M, Moss"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("260.00")));
    EXPECT_TRUE(text.contains(QRegularExpression(QStringLiteral("\\be +Tee, M, Moss"))));
    EXPECT_TRUE(text.contains(QStringLiteral("23.50")));
    EXPECT_FALSE(text.contains(QStringLiteral("more garments")));
}

TEST_F(Papers, BothHalvesOfTheTicketHaveTheOrdersCode) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)});
    const QImage whole = pictureOf(claimTicket(shop(), order.id));
    const int torn = whole.width() * 108 / 148;
    const QStringList number{words(paperCode(std::to_string(order.number), order.id.value))};
    EXPECT_EQ(codesIn(whole.copy(0, 0, torn, whole.height())), number);
    EXPECT_EQ(codesIn(whole.copy(torn, 0, whole.width() - torn, whole.height())), number);
}

TEST(StubName, HidesTheFamilyNameAndKeepsAFirmWhole) {
    EXPECT_EQ(nameForStub(QStringLiteral("Bronagh Tully")), QStringLiteral("Bronagh T."));
    EXPECT_EQ(nameForStub(QStringLiteral("Zoë van der Meer")), QStringLiteral("Zoë M."));
    EXPECT_EQ(nameForStub(QStringLiteral("Harbour Rowing Club")), QStringLiteral("Harbour Rowing C."));
    EXPECT_EQ(nameForStub(QStringLiteral("Fen & Fold Books")), QStringLiteral("Fen & Fold Books"));
    EXPECT_EQ(nameForStub(QStringLiteral("Salt and Thread")), QStringLiteral("Salt and Thread"));
    EXPECT_EQ(nameForStub(QStringLiteral("4 Creek  Lane")), QStringLiteral("4 Creek Lane"));
    EXPECT_EQ(nameForStub(QStringLiteral("Pim")), QStringLiteral("Pim"));
    EXPECT_EQ(nameForStub(QString()), QString());
}

// ── care card ─────────────────────────────────────────────────────────────────────────────────────────

TEST_F(Papers, CareCardSaysFirstWashEveryLineAndTheLabel) {
    change([](ShopSettings& settings) { settings.whenEdgeLifts = "Bring it back within a year."; });
    const auto usual = stockUsualShop();
    const GarmentId id = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    cut(id, usual.roll);
    press(id);
    const Garment& garment = shop().facts.garments.at(id);
    const CareCard care = careOf(shop(), garment);
    const QString text = textOf({careCardPaper(shop(), id)}).simplified();
    EXPECT_TRUE(care.firstWash.english().starts_with("Do not wash before"));
    const auto hasWords = [&](const Sentence& said) {
        // Lines break and a second sentence stands below: every word is there, in turn.
        qsizetype from = 0;
        for (const QString& word :
             words(said).split(QRegularExpression(QStringLiteral("[ .;,]+")), Qt::SkipEmptyParts)) {
            const qsizetype at = text.indexOf(word, from, Qt::CaseInsensitive);
            if (at < 0)
                return false;
            from = at + word.size();
        }
        return true;
    };
    EXPECT_TRUE(hasWords(care.firstWash)) << text.toStdString();
    for (const CareLine& line : care.lines)
        EXPECT_TRUE(hasWords(line.words)) << line.words << "\n" << text.toStdString();
    EXPECT_TRUE(hasWords(said("Bring it back within a year")));
    EXPECT_TRUE(text.contains(garmentNumber(shop().facts, garment)));
    EXPECT_TRUE(text.contains(QStringLiteral("Tee, M, Moss")));
}

TEST_F(Papers, CareCardWithoutAPromiseOfTheShopMakesNone) {
    const auto usual = stockUsualShop();
    const GarmentId id = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    EXPECT_FALSE(textOf({careCardPaper(shop(), id)}).contains(QStringLiteral("edge lifting")));
}

// ── bag tag and roll label ────────────────────────────────────────────────────────────────────────────

TEST_F(Papers, BagTagSaysWhatIsToBeDone) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    const GarmentId id = garmentsOf(order).front();
    cut(id, usual.roll);
    const Garment& garment = shop().facts.garments.at(id);
    const Decal& decal = garment.decals.front();
    const QString text = textOf({bagTag(shop(), id)});
    for (const QString& said : {garmentNumber(shop().facts, garment), QStringLiteral("Tee, M, Moss"),
                                QStringLiteral("150 °C 12 s"), QStringLiteral("24 h"),
                                clock(shop().facts.orders.at(order).promised), QStringLiteral("Heron, chest"),
                                QStringLiteral("%1 × %2 mm").arg(decal.width.value).arg(decal.height.value),
                                QStringLiteral("%1 mm down").arg(decal.below.value), QStringLiteral("Dusk")})
        EXPECT_TRUE(text.contains(said)) << said.toStdString() << "\n" << text.toStdString();
}

TEST_F(Papers, BagTagOfAHeldGarmentSaysWhatHoldsIt) {
    const auto usual = stockUsualShop();
    const GarmentId id = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front(); // an unwashed lot
    ASSERT_TRUE(shop().of(id).isHeld());
    EXPECT_TRUE(textOf({bagTag(shop(), id)}).contains(words(shop().of(id).firstHold()->what)));
}

TEST_F(Papers, RollLabelSaysFilmWidthAndUseBy) {
    const auto usual = stockUsualShop();
    const QString text = textOf({labelOfRoll(shop(), usual.roll)});
    const FilmRoll& roll = shop().facts.rolls.at(usual.roll);
    EXPECT_TRUE(text.contains(words(roll.label())));
    EXPECT_TRUE(text.contains(QStringLiteral("Marram Soft, Dusk")));
    EXPECT_TRUE(text.contains(QStringLiteral("500 mm wide")));
    EXPECT_TRUE(text.contains(date(roll.receivedOn)));
    // By warmth, in a place that nobody read.
    const RollCondition& condition = shop().conditions.at(usual.roll);
    ASSERT_TRUE(condition.useByRange);
    EXPECT_TRUE(
        text.contains(QStringLiteral("Use by %1 (%2")
                          .arg(date(*condition.useBy),
                               words(nearSpan(*condition.useByRange)).section(QLatin1Char(' '), 0, 0))))
        << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("an estimate of 25 Nov 2026"))) << text.toStdString();
}

// ── day sheet ─────────────────────────────────────────────────────────────────────────────────────────

TEST_F(Papers, DaySheetOfAnEmptyShopIsOnePageThatSaysSo) {
    const auto pages = daySheet(shop());
    ASSERT_EQ(pages.size(), 1U);
    const QString text = textOf(pages);
    EXPECT_TRUE(text.contains(QStringLiteral("Nothing can be pressed today.")));
    EXPECT_TRUE(text.contains(QStringLiteral("page 1 of 1")));
    EXPECT_TRUE(text.contains(QStringLiteral("Platens burn")));
}

TEST_F(Papers, DaySheetHasEveryGarmentOnceAndItsHeadOnEachPage) {
    const auto usual = stockUsualShop();
    std::vector<GarmentId> all;
    for (int order = 0; order < 3; ++order)
        for (const GarmentId id : garmentsOf(takeOrder(manyGarments(usual, 2)).id)) {
            cut(id, usual.roll);
            all.push_back(id);
        }
    for (int order = 0; order < 6; ++order)
        for (const GarmentId id : garmentsOf(takeOrder(manyGarments(usual, 3)).id)) // out of stock: aside
            all.push_back(id);
    const auto pages = daySheet(shop());
    ASSERT_GT(pages.size(), 1U);
    const QString text = textOf(pages);
    for (std::size_t at = 1; at <= pages.size(); ++at)
        EXPECT_EQ(countOf(text, QStringLiteral("page %1 of %2").arg(at).arg(pages.size())), 1);
    EXPECT_EQ(countOf(text, QStringLiteral("At the press, Wednesday 25 November")),
              static_cast<int>(pages.size()));
    for (const GarmentId id : all) {
        const QString label = garmentNumber(shop().facts, shop().facts.garments.at(id));
        static const QString kSpace = QStringLiteral("\\b");
        EXPECT_EQ(text.count(QRegularExpression(kSpace + QRegularExpression::escape(label) + kSpace)), 1)
            << label.toStdString();
    }
    for (const QString& said :
         {QStringLiteral("150 °C, 12 s, medium"), QStringLiteral("peel warm"), QStringLiteral("preheat"),
          QStringLiteral("Needed: "), QStringLiteral("licensed electrician"),
          QStringLiteral("safety data sheet"), QStringLiteral("Ventilate"), QStringLiteral("local law")})
        EXPECT_TRUE(text.contains(said, Qt::CaseInsensitive)) << said.toStdString();
}

TEST_F(Papers, DaySheetNamesTheRollToTakeDownForWhatIsStillToBeCut) {
    const auto usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    const QString text = textOf(daySheet(shop()));
    const QString roll = words(shop().facts.rolls.at(usual.roll).label());
    EXPECT_TRUE(text.contains(QStringLiteral("Rolls to take down")));
    EXPECT_TRUE(text.contains(roll)) << text.toStdString();
    // A garment that waits for its decals needs a cut, not time.
    EXPECT_TRUE(text.contains(QStringLiteral("To cut. Needed: cut from %1").arg(roll))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("Needed: only time")));
}

// ── what is out of the usual ──────────────────────────────────────────────────────────────────────────

TEST_F(Papers, WithTheLongestNamesStayOnThePaperAndKeepTheirAmounts) {
    change([](ShopSettings& settings) {
        settings.shopName = kLongestName;
        settings.fairName = kLongestName;
        settings.collectAt = kLongestName + " at the far end of the harbour";
        settings.whenEdgeLifts = kLongestName + " " + kLongestName + " again";
    });
    auto usual = stockUsualShop();
    usual.style = addStyle(kLongestName, [&](BlankStyle& style) {
        style.sizes = {"18–24 months, tall"};
        style.colours = {{{}, kLongestName.substr(0, 40), 0x66754c}};
    });
    usual.moss = coloursOf(usual.style).front().id;
    usual.film = addFilm(kLongestName.substr(0, 40), [&](Film& film) { film.finish = kLongestName; });
    usual.roll = receiveRoll(usual.film, usual.place);
    auto garment = aGarment(usual, "18–24 months, tall");
    garment.price = Money{1234567};
    garment.decals.front().content = Wording{kLongestName, Face::BookSerif};
    for (const char* more : {" 2", " 3", " 4", " 5"}) {
        garment.decals.push_back(garment.decals.front());
        garment.decals.back().content = Wording{kLongestName + more, Face::BookSerif};
    }
    const auto order = takeOrder({garment, garment}, kLongestName + " Harbourmaster").id;
    for (const Paper& paper : allOf(order, usual.roll)) {
        SCOPED_TRACE(paper.name.toStdString());
        EXPECT_TRUE(staysOnPaper(paper));
        // Nothing lies over the code.
        const int codes = paper.name.startsWith(QStringLiteral("day-sheet"))      ? 0
                          : paper.name.startsWith(QStringLiteral("claim-ticket")) ? 2
                                                                                  : 1;
        EXPECT_EQ(codesIn(pictureOf(paper)).size(), codes);
    }
    const QString text = textOf({claimTicket(shop(), order)});
    EXPECT_TRUE(text.contains(QStringLiteral("24,691.34"))) << text.toStdString(); // of both
}

TEST_F(Papers, UsualOnesStayOnThePaper) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder(manyGarments(usual, 12)).id;
    for (const Paper& paper : allOf(order, usual.roll))
        EXPECT_TRUE(staysOnPaper(paper)) << paper.name.toStdString();
}

TEST_F(Papers, OfAShopWithoutANameLeaveItOut) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    ReckonedShop nameless = shop();
    nameless.facts.settings.shopName.clear();
    EXPECT_TRUE(textOf({claimTicket(nameless, order)}).contains(QStringLiteral("At the workshop")));
    EXPECT_TRUE(textOf({careCardPaper(nameless, garmentsOf(order).front())})
                    .contains(QStringLiteral("how to keep it looking new")));
    EXPECT_TRUE(staysOnPaper(daySheet(nameless).front()));
}

// ── what is asked for ─────────────────────────────────────────────────────────────────────────────────

TEST_F(Papers, CareCardsAreForWhatIsPressedOnly) {
    const auto usual = stockUsualShop();
    SlipTarget matter;
    matter.order = takeOrder(manyGarments(usual, 2)).id;
    EXPECT_FALSE(paperErrand(desk(), PaperName::CareCards, matter).ok());
    const GarmentId first = garmentsOf(*matter.order).front();
    cut(first, usual.roll);
    press(first);
    const auto cards = valueOf(paperErrand(desk(), PaperName::CareCards, matter));
    EXPECT_EQ(valueOf(cards.papers()).size(), 1U);
    EXPECT_EQ(
        cards.title,
        QStringLiteral("Care card %1").arg(garmentNumber(shop().facts, shop().facts.garments.at(first))));
    EXPECT_EQ(valueOf(valueOf(paperErrand(desk(), PaperName::BagTags, matter)).papers()).size(), 2U);
}

TEST_F(Papers, OfAClosedOrderCanStillBePrinted) {
    const auto usual = stockUsualShop();
    SlipTarget matter;
    matter.order = takeOrder({aGarment(usual)}).id;
    const GarmentId garment = garmentsOf(*matter.order).front();
    cut(garment, usual.roll);
    press(garment);
    valueOf(db::handOver(file(), *matter.order, now()));
    EXPECT_FALSE(shop().facts.orders.find(*matter.order));
    EXPECT_TRUE(paperErrand(desk(), PaperName::CareCards, matter).ok());
    EXPECT_TRUE(paperErrand(desk(), PaperName::ClaimTicket, matter).ok());
    EXPECT_FALSE(paperErrand(desk(), PaperName::BagTags, matter).ok());
}

TEST_F(Papers, OfWhatIsGoneAreRefusedInWords) {
    for (const PaperName name :
         {PaperName::ClaimTicket, PaperName::CareCards, PaperName::BagTags, PaperName::RollLabel}) {
        const auto errand = paperErrand(desk(), name, {});
        ASSERT_FALSE(errand.ok());
        EXPECT_TRUE(words(errand.error().message.english()).contains(QStringLiteral("no longer there")));
    }
    EXPECT_TRUE(paperErrand(desk(), PaperName::DaySheet, {}).ok());
}

} // namespace
} // namespace holdfast::app::test
