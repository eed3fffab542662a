// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The Cutting bench in a window of its own over a real shop, worked by keys and mouse.

#include "app/places/cutting_bench/bench_rows.h"
#include "app/places/cutting_bench/bench_tools.h"
#include "app/places/cutting_bench/bench_view.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cut_sentence.h"
#include "app/places/cutting_bench/cutting_bench_place.h"
#include "app/widgets/button.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/label.h"
#include "app/widgets/sewn_tabs.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QTest>

#include <cstdlib>

namespace holdfast::app::test {

class CuttingBenchFixture : public ShopFixture {
protected:
    // Searches end after so many rounds: the same nest each time.
    CuttingBenchFixture() { CuttingBenchPlace::setSearchRounds(40); }
    ~CuttingBenchFixture() override {
        place.reset();
        CuttingBenchPlace::setSearchRounds(std::nullopt);
    }

    void open(QSize size = {1270, 708}) {
        place = std::make_unique<CuttingBenchPlace>(desk());
        QObject::connect(&desk(), &ShopDesk::slipAsked, place.get(),
                         [this](SlipName slip, const SlipTarget& matter) {
                             asked.push_back(slip);
                             askedFor = matter;
                         });
        QObject::connect(&desk(), &ShopDesk::failed, place.get(),
                         [this](const QString& reason) { refused = reason; });
        QObject::connect(&desk(), &ShopDesk::said, place.get(),
                         [this](const QString& words) { said = words; });
        place->headerTools()->setParent(place.get());
        showWindow(*place, size);
        place->opened();
    }
    void waitForWriting() { QTRY_VERIFY_WITH_TIMEOUT(!place->isWriting(), 60'000); }
    void waitForSearch() { QTRY_VERIFY_WITH_TIMEOUT(!place->isSearching(), 20'000); }

    template <class Widget>
    Widget* part(const QString& name) {
        auto* found = place->findChild<Widget*>(name);
        if (!found)
            stopBecause("no widget is called " + name.toStdString());
        return found;
    }
    BenchView* bench() { return part<BenchView>(QStringLiteral("bench")); }
    BenchTools* tools() { return place->findChild<BenchTools*>(); }
    Button* button(const char* name) { return part<Button>(QLatin1String(name)); }
    BenchRows* rows(const char* name) { return part<BenchRows>(QLatin1String(name)); }
    CutSentence* sentence() { return part<CutSentence>(QStringLiteral("cutSentence")); }
    SewnTabs* films() { return part<SewnTabs>(QStringLiteral("films")); }
    const BenchModel& model() { return place->model(); }
    const Nest& nest(std::size_t at = 0) { return model().nests().at(at); }
    std::string fact(const char* name) {
        return part<FactBlock>(QLatin1String(name))->accessibleName().toStdString();
    }
    std::string label(const char* name) { return part<Label>(QLatin1String(name))->text().toStdString(); }
    const FilmRoll& roll(RollId id) { return desk().shop()->facts.rolls.at(id); }

    // Where the keyboard is.
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* focused = QApplication::focusWidget();
        QTest::keyClick(focused && place->isAncestorOf(focused) ? focused : place.get(), key, modifiers);
    }
    // Takes a decal by its middle, moves it by so many pixels and lets go.
    void drag(DecalId decal, QPoint by) {
        QWidget* on = bench()->viewport();
        const QPoint from = bench()->rectOf(decal).center().toPoint();
        QTest::mousePress(on, Qt::LeftButton, {}, from);
        for (const int share : {1, 2, 3, 4})
            QTest::mouseMove(on, from + by * share / 4);
        QTest::mouseRelease(on, Qt::LeftButton, {}, from + by);
    }

    // By keys, in the list of rolls.
    void cutFirstFrom(RollId roll) {
        key(Qt::Key_L);
        key(Qt::Key_Home);
        for (std::size_t at = 0; nest().roll != roll && at + 1 < model().film()->rolls.size(); ++at)
            key(Qt::Key_Down);
        if (nest().roll != roll)
            stopBecause("the roll is not offered");
    }

    GarmentDraft withDecal(const UsualShop& usual, Millimetres width, Millimetres height,
                           DecalContent content = Artwork{"heron"}) {
        GarmentDraft garment = aGarment(usual);
        garment.decals.front().width = width;
        garment.decals.front().height = height;
        garment.decals.front().content = std::move(content);
        return garment;
    }

    // Every decal on its roll within the edges, none within the gap of another; said by nobody who nests.
    static std::string faultIn(const Nest& nest) {
        for (std::size_t one = 0; one < nest.decals.size(); ++one) {
            const FilmArea& lies = nest.decals[one].lies;
            if (lies.across < nest.edge || nest.rollWidth - nest.edge < lies.across + lies.acrossSize)
                return "a decal lies over the edge";
            if (lies.along.value < 0 || nest.length < lies.along + lies.alongSize)
                return "a decal lies behind the parting cut";
            for (std::size_t other = one + 1; other < nest.decals.size(); ++other) {
                const FilmArea& next = nest.decals[other].lies;
                const bool isClear = lies.along + lies.alongSize + nest.gap <= next.along ||
                                     next.along + next.alongSize + nest.gap <= lies.along ||
                                     lies.across + lies.acrossSize + nest.gap <= next.across ||
                                     next.across + next.acrossSize + nest.gap <= lies.across;
                if (!isClear)
                    return "two decals lie nearer than the gap";
            }
        }
        return {};
    }

    std::unique_ptr<CuttingBenchPlace> place;
    std::vector<SlipName> asked;
    SlipTarget askedFor;
    QString refused;
    QString said;
};

} // namespace holdfast::app::test
