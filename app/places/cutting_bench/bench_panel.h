#pragma once
// At the right of the bench: what is on it, what is not and why, the rolls to cut from, the offcuts, how the
// sheet is made, the figures, and what is done with it all.

#include "app/desk/shop_desk.h"
#include "app/places/cutting_bench/bench_model.h"
#include "app/widgets/card.h"
#include "core/cutting/cut_file.h"

namespace holdfast::app {

class Banner;
class Button;
class FactBlock;
class KeyHint;
class Label;
class BenchGroups;
class BenchRows;
class OptionList;
class ShareBar;
class Switch;

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

signals:
    void wishChanged();
    void saveAsked();
    void sheetAsked();
    void cutAsked();

private:
    QWidget* makeLists();
    QWidget* makeSwitches();
    QWidget* makeFigures();
    QWidget* makeActs();
    Switch* addSwitch(QLayout* column, const QString& icon, const QString& name, const char* objectName,
                      Label*& note, bool CutFileWish::*what);
    void showRolls();
    void showRows();
    void showCut();
    void chooseRoll(int at);

    ShopDesk& m_desk;
    BenchModel& m_model;
    CutFileWish m_wish;
    Banner* m_useFirst = nullptr;
    BenchGroups* m_groups = nullptr;
    BenchRows* m_noRoll = nullptr;
    BenchRows* m_leftOut = nullptr;
    BenchRows* m_lacking = nullptr;
    BenchRows* m_notYet = nullptr;
    KeyHint* m_rollsTitle = nullptr;
    OptionList* m_rolls = nullptr;
    BenchRows* m_offcuts = nullptr;
    BenchRows* m_cut = nullptr;
    QWidget* m_foot = nullptr; // what is there only while there is something to cut
    Label* m_mirrorNote = nullptr;
    Label* m_boxesNote = nullptr;
    Label* m_cutOffNote = nullptr;
    FactBlock* m_length = nullptr;
    FactBlock* m_left = nullptr;
    ShareBar* m_shares = nullptr;
    Label* m_least = nullptr;
    Button* m_save = nullptr;
    Button* m_sheet = nullptr;
    Button* m_markCut = nullptr;
    std::vector<DecalId> m_leftOutRows;
    std::vector<std::pair<FreeingAct, Matter>> m_notYetRows;
    std::vector<std::pair<RollId, FilmArea>> m_offcutRows;
    std::vector<DecalId> m_cutRows;
};

} // namespace holdfast::app
