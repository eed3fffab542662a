// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// At the right of the bench, or below it in a narrow window: what lies on the film, what waits and why, the
// rolls to cut from, the offcuts, how it is cut, the figures, and what is done with it all.

#include "app/desk/shop_desk.h"
#include "app/places/cutting_bench/bench_model.h"
#include "app/places/cutting_bench/cut_sentence.h"
#include "app/widgets/card.h"
#include "core/cutting/cut_file.h"

class QBoxLayout;

namespace holdfast::app {

class BenchGroups;
class BenchRows;
class Button;
class FactBlock;
class KeyHint;
class Label;
class OptionList;
class ShareBar;
class VerticalScroll;

class BenchPanel : public Card {
    Q_OBJECT

public:
    BenchPanel(ShopDesk& desk, BenchModel& model, QWidget* parent = nullptr);

    // After the model has changed.
    void refresh();
    // After another decal was taken in hand.
    void showFigures();
    // The nest that is spoken of: the one with the decal at hand, else the first. None: nothing is laid.
    const Nest* nest() const;
    const CutFileWish& wish() const { return m_wish; }
    // Shows this decal among those that are cut and not pressed yet, and puts the keyboard there; false where
    // it is none of them.
    bool showCut(DecalId decal);
    // As narrow as it is with its parts above one another.
    QSize minimumSizeHint() const override;

signals:
    void wishChanged();
    void saveAsked();
    void sheetAsked();
    void cutAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeLists();
    QWidget* makeLinks();
    QWidget* makeCutList();
    QWidget* makeDetails();
    QWidget* makeActs();
    void arrange();
    void showRolls();
    void showRows();
    void showCutList();
    void showLinks();
    void showSection(QWidget* section);
    void chooseRoll(int at);
    void markMiscut();
    void turn(CutSentence::Choice choice);

    ShopDesk& m_desk;
    BenchModel& m_model;
    CutFileWish m_wish;
    QBoxLayout* m_body = nullptr; // the lists, and the foot with what is done
    VerticalScroll* m_scroll = nullptr;
    QWidget* m_foot = nullptr;
    QWidget* m_details =
        nullptr; // how it is cut and the figures: in the foot, or in a low window above the lists
    QWidget* m_acts = nullptr;
    struct Link {
        Button* button;
        QWidget* section;
    };
    std::vector<Link> m_links; // to what may be below the fold
    QWidget* m_linkRow = nullptr;
    BenchGroups* m_groups = nullptr;
    Button* m_moreGroups = nullptr;
    BenchRows* m_noRoll = nullptr;
    BenchRows* m_leftOut = nullptr;
    BenchRows* m_lacking = nullptr;
    BenchRows* m_notYet = nullptr;
    KeyHint* m_rollsTitle = nullptr;
    OptionList* m_rolls = nullptr;
    BenchRows* m_offcuts = nullptr;
    QWidget* m_cut = nullptr;
    OptionList* m_cutList = nullptr;
    Button* m_miscut = nullptr;
    CutSentence* m_sentence = nullptr;
    FactBlock* m_length = nullptr;
    FactBlock* m_left = nullptr;
    ShareBar* m_shares = nullptr;
    Label* m_least = nullptr;
    Button* m_save = nullptr;
    Button* m_sheet = nullptr;
    Button* m_markCut = nullptr;
    std::vector<DecalId> m_leftOutRows;
    std::vector<std::pair<FreeingAct, SlipTarget>> m_notYetRows;
    std::vector<std::pair<RollId, FilmArea>> m_offcutRows;
    std::vector<DecalId> m_cutRows;
};

} // namespace holdfast::app
