// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Cutting bench: the decals that wait, film by film, nested on real rolls to scale; what the knife is given
// as a file and on paper; and what became of the cutting.

#include "app/desk/place.h"
#include "app/places/cutting_bench/bench_model.h"
#include "app/places/cutting_bench/bench_search.h"
#include "app/places/cutting_bench/cut_writing.h"

#include <functional>
#include <optional>

class QBoxLayout;
class QStackedWidget;

namespace holdfast::app {

class EmptyState;
class KeyHint;
class Label;
class BenchFoot;
class BenchPanel;
class BenchTools;
class BenchView;
class SewnTabs;

class CuttingBenchPlace : public Place {
    Q_OBJECT

public:
    explicit CuttingBenchPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void takeKeyboard() override;
    void turnTo(const SlipTarget& matter) override;
    // A roll's label turns to its film with that roll first; a bag tag or a ticket shows a decal of it that
    // lies here, waits or is cut and not pressed. False: nothing here has to do with it.
    bool takeScan(const SlipTarget& matter) override;
    QVector<PlaceKey> moreKeys() const override;
    QSize minimumSizeHint() const override;

    // Every search ends after this many rounds, for pictures and tests that must come out the same each time.
    static void setSearchRounds(std::optional<std::uint64_t> rounds);

    bool isSearching() const { return m_search.isSearching(); }
    const BenchModel& model() const { return m_model; }

    // ── what is done with the bench ──
    // Written in the background (see cut_writing.h); what became of it is said. The search ends before: what
    // is written is what lies there, and stays there.
    void saveCutFiles(const QString& path);
    void printCutSheets(const QString& folder); // for a PDF, where no printer takes them
    bool isWriting() const { return m_writing.isBusy(); }
    void markCut();

protected:
    void hideEvent(QHideEvent* event) override;
    bool event(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeBench();
    void arrange();
    int leastBench() const;
    int leastPanel() const;
    bool isNarrow() const; // too narrow for the panel at the right of the bench
    void listenToModel();
    void listenToWork();
    void refresh();
    void showFilms();
    void showBench();
    void showTools();
    void searchByItself();
    StripSearch howToSearch(std::uint64_t work) const;
    void searchAgain();
    void searchIsOver();
    void sayOutcome();
    bool scanRoll(RollId roll);
    bool showDecalOf(const SlipTarget& matter);
    void countTools();
    void turnDecal();
    void turnPin();
    using Writing = std::function<Result<std::string>(const CutToWrite&, const BackgroundWork::Progress&)>;
    void write(const QString& words, Writing writing);
    void saved(const QString& path, const QString& words, Writing writing);
    void askCutFile();
    QString folder(); // where files went last

    BenchModel m_model;
    BenchSearch m_search;
    BackgroundWork m_writing;
    QBoxLayout* m_row = nullptr;       // the bench and its panel, above one another in a narrow window
    QStackedWidget* m_pages = nullptr; // the bench, or that nothing waits
    EmptyState* m_empty = nullptr;
    SewnTabs* m_films = nullptr;
    BenchTools* m_tools = nullptr;
    BenchView* m_view = nullptr;
    BenchFoot* m_foot = nullptr;
    BenchPanel* m_panel = nullptr;
    QWidget* m_header = nullptr;
    Label* m_count = nullptr;
    KeyHint* m_filmKey = nullptr;
    KeyHint* m_benchKey = nullptr;
    bool m_isStale = true;
    bool m_isCutting = false; // nothing changes until all rolls are charged
    bool m_wasAsked = false;  // the search under way was asked for: what it found is said
    Millimetres m_before;     // the length when it was asked for
};

} // namespace holdfast::app
