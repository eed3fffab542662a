#pragma once
// The head of a place: its title in serif, what day or fair it is about, and the place's own tools at the
// right.

#include <QWidget>

class QHBoxLayout;

namespace holdfast::app {

class ElidingLabel;
class Label;

class PlaceHeader : public QWidget {
    Q_OBJECT

public:
    explicit PlaceHeader(QWidget* parent = nullptr);

    void setTitle(const QString& title);
    void setSubtitle(const QString& subtitle);
    // Shows these tools and hides those of other places; null for none. They stay the place's own to delete.
    void setTools(QWidget* tools);

private:
    QHBoxLayout* m_row = nullptr;
    Label* m_title = nullptr;
    ElidingLabel* m_subtitle = nullptr;
    QWidget* m_tools = nullptr;
};

} // namespace holdfast::app
