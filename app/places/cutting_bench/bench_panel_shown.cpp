// SPDX-License-Identifier: GPL-3.0-or-later
// What the panel at the right of the bench shows.
#include "app/places/cutting_bench/bench_panel.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_groups.h"
#include "app/places/cutting_bench/bench_rows.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cut_not_pressed.h"
#include "app/places/cutting_bench/share_bar.h"
#include "app/slips/option_list.h"
#include "app/widgets/button.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"

#include <QScrollBar>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

// The finding that keeps a decal from being cut, by what was said of it.
const Finding* findingOf(const ReckonedShop& shop, const Garment& garment, const Sentence& why) {
    for (const Finding& finding : shop.of(garment.id).findings)
        if (finding.holds() && why.says(finding.what) && why.says(finding.why))
            return &finding;
    return nullptr;
}

} // namespace

void BenchPanel::refresh() {
    const bool hasFilm = m_model.film() != nullptr;
    m_foot->setVisible(hasFilm);
    m_details->setVisible(hasFilm);
    setTitle(hasFilm ? tr("On this film") : tr("Nothing to cut"));
    m_groups->show(m_model);
    m_groups->setVisible(!m_groups->groups().isEmpty());
    m_moreGroups->setVisible(m_groups->hidden() > 0);
    m_moreGroups->setText(tr("Show %1 more").arg(m_groups->hidden()));
    showRolls();
    showRows();
    showCutList();
    showLinks();
    showFigures();
}

void BenchPanel::showRolls() {
    const FilmToCut* film = m_model.film();
    const bool hasRolls = film && !film->rolls.empty();
    // The one roll that is cut from has its line above the film.
    const bool isChoice = hasRolls && (film->rolls.size() > 1 || !film->rolls.front().mayBeUsed);
    m_rollsTitle->setVisible(isChoice);
    m_rolls->setVisible(isChoice);
    QVector<BenchRow> none;
    if (film && !hasRolls)
        none.append({.text = tr("There is no roll of this film."),
                     .act = tr("Receive a roll"),
                     .actName = tr("Receive a roll of this film")});
    m_noRoll->setRows(none);
    if (!isChoice)
        return;
    const auto first = m_model.firstRollOf(*film);
    int chosen = -1;
    QVector<Option> options;
    for (const RollOffer& offer : film->rolls) {
        const FilmRoll* roll = m_model.facts().rolls.find(offer.roll);
        if (offer.roll == first)
            chosen = static_cast<int>(options.size());
        options.append({.text = tr("%1, %2, %3 wide")
                                    .arg(rollLabel(m_model.facts(), offer.roll),
                                         metres(roll ? roll->left : Millimetres{}),
                                         millimetres(roll ? roll->width : Millimetres{})),
                        .second = words(offer.reason),
                        .iconName = offer.mayBeUsed ? QString() : QStringLiteral("hold"),
                        .tone = offer.mayBeUsed ? Tone::Plain : Tone::Held,
                        .shade = {}});
    }
    m_rolls->setOptions(options, chosen);
}

void BenchPanel::showRows() {
    QVector<BenchRow> leftOut;
    QVector<BenchRow> lacking;
    QVector<BenchRow> notYet;
    QVector<BenchRow> offcuts;
    m_leftOutRows.clear();
    m_notYetRows.clear();
    m_offcutRows.clear();
    if (const FilmToCut* film = m_model.film()) {
        const ShopFacts& facts = m_model.facts();
        const FilmOnBench& bench = m_model.onBench();
        for (const DecalId id : film->waiting) {
            const DecalOnGarment decal = m_model.decal(id);
            const QString title = decalTitle(facts, decal);
            if (bench.wish.leftOut.contains(id)) {
                leftOut.append(
                    {.text = title, .act = tr("Put back"), .actName = tr("Put back %1").arg(title)});
                m_leftOutRows.push_back(id);
            } else if (const auto lack = bench.laid.lack.find(id); lack != bench.laid.lack.end()) {
                lacking.append({.text = title, .second = words(lack->second)});
            }
        }
        for (const auto& [id, why] : film->notYet) {
            const DecalOnGarment decal = m_model.decal(id);
            if (!decal.garment)
                continue;
            BenchRow row{.text = decalTitle(facts, decal), .second = words(why)};
            const Finding* finding = findingOf(*m_model.shop(), *decal.garment, why);
            m_notYetRows.emplace_back();
            if (finding && !finding->frees.empty()) {
                row.act = tr("See to it");
                row.actName = words(freeingWords(finding->frees.front()));
                m_notYetRows.back() = {finding->frees.front(), SlipTarget::of(*finding, *decal.garment)};
            }
            notYet.append(row);
        }
        for (const Nest& nest : m_model.nests())
            for (const FilmArea& area : nest.offcuts) {
                const QString size = areaWords(area);
                offcuts.append({.text = m_model.nests().size() > 1
                                            ? tr("%1 of %2").arg(size, rollLabel(facts, nest.roll))
                                            : size,
                                .act = tr("Keep"),
                                .actName = tr("Keep the offcut of %1").arg(size),
                                .isSwitch = true,
                                .isOn = m_model.keepsOffcut(nest.roll, area)});
                m_offcutRows.emplace_back(nest.roll, area);
            }
    }
    m_leftOut->setRows(leftOut);
    m_leftOut->setActOnAll(leftOut.size() > 1 ? tr("Put all back") : QString());
    m_lacking->setRows(lacking);
    m_notYet->setRows(notYet);
    m_offcuts->setRows(offcuts);
}

void BenchPanel::showCutList() {
    const ReckonedShop& shop = *m_model.shop();
    const FilmToCut* film = m_model.film();
    const int before = m_cutList->chosenAt();
    const auto chosen =
        before < 0 ? std::nullopt : std::optional{m_cutRows[static_cast<std::size_t>(before)]};
    QVector<Option> options;
    int at = -1;
    m_cutRows.clear();
    for (const DecalOnGarment& each : cutNotPressed(shop, film ? std::optional{film->film} : std::nullopt)) {
        if (each.decal->id == chosen)
            at = static_cast<int>(options.size());
        const Film& of = shop.facts.films.at(each.decal->film);
        options.append(
            {.text = decalTitle(shop.facts, each),
             .second = tr("from %1, %2")
                           .arg(rollLabel(shop.facts, *each.decal->cutFrom),
                                dayNear(dateOf(shop.now.toLocal(*each.decal->cutAt)), shop.now.today())),
             .shade = colourOf(of.rgb)});
        m_cutRows.push_back(each.decal->id);
    }
    const int scrolled = m_cutList->verticalScrollBar()->value();
    m_cutList->setOptions(options, at);
    m_cutList->verticalScrollBar()->setValue(scrolled);
    m_cut->setVisible(!options.isEmpty());
    m_miscut->setCannot(at < 0 ? tr("Choose which decal was cut wrong first.") : QString());
}

void BenchPanel::showLinks() {
    const FilmToCut* film = m_model.film();
    const std::size_t lacking = film ? m_model.onBench().laid.lack.size() : 0;
    const std::size_t rolls = film && film->rolls.size() > 1 ? film->rolls.size() : 0;
    const std::array<std::pair<QString, QWidget*>, 5> said{
        {{m_leftOutRows.empty() ? QString() : tr("%1 left out").arg(m_leftOutRows.size()), m_leftOut},
         {lacking == 0 ? QString() : tr("%1 on no roll").arg(lacking), m_lacking},
         {m_notYetRows.empty() ? QString() : tr("%1 waiting").arg(m_notYetRows.size()), m_notYet},
         {rolls == 0 ? QString() : tr("%1 rolls").arg(rolls), m_rolls},
         {m_cutRows.empty() ? QString() : tr("%1 cut").arg(m_cutRows.size()), m_cut}}};
    bool hasAny = false;
    for (std::size_t at = 0; at < said.size(); ++at) {
        m_links[at].section = said[at].second;
        m_links[at].button->setText(said[at].first);
        m_links[at].button->setVisible(!said[at].first.isEmpty());
        hasAny = hasAny || !said[at].first.isEmpty();
    }
    m_linkRow->setVisible(hasAny && film);
}

void BenchPanel::showFigures() {
    // What lay there before says nothing about what is being laid.
    const Nest* shown = m_model.isBeingLaid() ? nullptr : nest();
    const QString nothing = shown                   ? QString()
                            : m_model.isBeingLaid() ? beingLaidWords()
                                                    : tr("Nothing is on the bench.");
    for (Button* button : {m_save, m_sheet, m_markCut})
        button->setCannot(nothing);
    m_sentence->set(m_wish, shown ? millimetres(shown->length) : QString());
    if (!shown) {
        m_length->setLabel(tr("Length used"));
        m_length->set(tr("–"));
        m_left->setLabel(tr("Left"));
        m_left->set(tr("–"));
        m_shares->hide();
        m_least->setText(m_model.isBeingLaid() ? nothing : QString());
        return;
    }
    m_shares->show();
    const ReckonedShop& shop = *m_model.shop();
    const QString label = rollLabel(shop.facts, shown->roll);
    Millimetres together;
    for (const Nest& each : m_model.nests())
        together += each.length;
    const auto count = static_cast<int>(m_model.nests().size());
    m_length->setLabel(count > 1 ? tr("Length used of %1").arg(label) : tr("Length used"));
    m_length->set(millimetres(shown->length),
                  count > 1 ? tr("%1 on %2 rolls").arg(millimetres(together)).arg(count) : QString());
    m_left->setLabel(tr("Left on %1 after").arg(label));
    m_left->set(metres(shown->rollLeft - shown->length));
    m_shares->set(shown->shares(), colourOf(shop.facts.films.at(shown->film).rgb));
    m_least->setText(lengthWords(m_model, *shown));
}

} // namespace holdfast::app
