#pragma once
// What Press walk shows at the right of the header: how far the day is, when it ends, and the clock.

#include "core/press/walk.h"

#include <QString>
#include <QWidget>

namespace holdfast::app {

class Button;
class ProgressBeads;

class WalkTools : public QWidget {
    Q_OBJECT

public:
    explicit WalkTools(QWidget* parent = nullptr);

    void show(const Walk& walk, const Now& now);
    void setClock(const QString& time);

    QSize sizeHint() const override;
    // Without the beads, in a narrow window.
    QSize minimumSizeHint() const override;

signals:
    void daySheetAsked();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    int endsWidth() const;
    int widthWith(int beads) const;
    void place();

    ProgressBeads* m_beads = nullptr;
    Button* m_sheet = nullptr;
    QString m_ends; // "11:28"; empty when all is pressed
    QString m_clock;
};

} // namespace holdfast::app
