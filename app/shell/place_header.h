// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The head of a place: its title in serif, what day or fair it is about, the way back where another place led
// here, and the place's own tools at the right.

#include <QWidget>

class QHBoxLayout;

namespace holdfast::app {

class Button;
class ElidingLabel;
class Label;

class PlaceHeader : public QWidget {
    Q_OBJECT

public:
    explicit PlaceHeader(QWidget* parent = nullptr);

    void setTitle(const QString& title);
    void setSubtitle(const QString& subtitle);
    // The name of the place that led here; empty: none did.
    void setWayBack(const QString& place);
    // Shows these tools and hides those of other places; null for none. They stay the place's own to delete.
    void setTools(QWidget* tools);
    bool isOfTools(const QWidget* widget) const;

    // One row; where the tools do not fit next to the title, as many more as they need.
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;

signals:
    void backAsked();
    void heightChanged();

private:
    bool fitsOneRow(int width) const;
    int roomForTools(int width) const;
    int toolsHeight(int width) const;
    void layTools();

    QHBoxLayout* m_row = nullptr;
    QHBoxLayout* m_second = nullptr; // below, of the tools, where the window is narrow
    Label* m_title = nullptr;
    ElidingLabel* m_subtitle = nullptr;
    Button* m_back = nullptr;
    QWidget* m_tools = nullptr;
};

} // namespace holdfast::app
