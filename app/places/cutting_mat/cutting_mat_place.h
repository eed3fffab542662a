#pragma once
// Cutting mat: the decals that wait, film by film, nested on real rolls to scale; what the knife is given as
// a file and on paper; and what became of the cutting.

#include "app/desk/place.h"
#include "app/places/cutting_mat/mat_model.h"
#include "app/places/cutting_mat/mat_search.h"
#include "app/places/cutting_mat/mat_writing.h"

#include <functional>
#include <optional>

class QStackedWidget;

namespace holdfast::app {

class EmptyState;
class KeyHint;
class Label;
class MatFoot;
class MatPanel;
class MatTools;
class MatView;
class SewnTabs;

class CuttingMatPlace : public Place {
    Q_OBJECT

public:
    explicit CuttingMatPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const Matter& matter) override;

    // Every search ends after so many rounds, for pictures and tests that must come out the same each time.
    static void setSearchRounds(std::optional<std::uint64_t> rounds);

    bool isSearching() const { return m_search.isSearching(); }
    const MatModel& model() const { return m_model; }

    // ── what is done with the mat ──
    // Written beside the window (see mat_writing.h); what became of it is said. The search ends before: what is
    // written is what lies there, and stays there.
    void saveCutFiles(const QString& path);
    void printMatSheets(const QString& folder); // for a PDF, where no printer takes them
    bool isWriting() const { return m_writing.isBusy(); }
    void markCut();

protected:
    void hideEvent(QHideEvent* event) override;

private:
    QWidget* makeMat();
    void listenToModel();
    void listenToWork();
    void refresh();
    void showFilms();
    void showMat();
    void showTools();
    void search(std::chrono::milliseconds budget);
    void searchAgain();
    void searchIsOver(Millimetres before);
    void countTools();
    void turnDecal();
    void turnPin();
    using Writing = std::function<Result<std::string>(const MatToWrite&, const BackgroundWork::Progress&)>;
    void write(const QString& words, Writing writing);
    void saved(const QString& path, const QString& words, Writing writing);
    void askCutFile();
    QString folder(); // where files went last

    MatModel m_model;
    MatSearch m_search;
    BackgroundWork m_writing;
    QStackedWidget* m_pages = nullptr; // the mat, or that nothing waits
    EmptyState* m_empty = nullptr;
    SewnTabs* m_films = nullptr;
    MatTools* m_tools = nullptr;
    MatView* m_view = nullptr;
    MatFoot* m_foot = nullptr;
    MatPanel* m_panel = nullptr;
    QWidget* m_header = nullptr;
    Label* m_count = nullptr;
    KeyHint* m_filmKey = nullptr;
    KeyHint* m_matKey = nullptr;
    bool m_isStale = true;
    bool m_isCutting = false; // the mat stands until all its rolls are charged
    bool m_wasAsked = false;  // the search under way was asked for: what it found is said
    std::uint64_t m_seed = 1;
};

} // namespace holdfast::app
