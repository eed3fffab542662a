#pragma once
// What stands in a place before anything does: one sentence on what will stand here, and the one action that
// starts it.

#include <QWidget>

namespace holdfast::app {

class Button;
class Label;

class EmptyState : public QWidget {
    Q_OBJECT

public:
    EmptyState(const QString& iconName, const QString& sentence, const QString& action,
               QWidget* parent = nullptr);

    void setSentence(const QString& sentence);
    void setAction(const QString& words); // empty words take the button away
    Button* button() const { return m_button; }

signals:
    void acted();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_iconName;
    Label* m_sentence = nullptr;
    Button* m_button = nullptr;
};

} // namespace holdfast::app
