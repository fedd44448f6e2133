// A quiet surface that holds one subject. Cards are not put into cards.
#pragma once

#include <QWidget>

class QHBoxLayout;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class Card : public QWidget
{
    Q_OBJECT

public:
    explicit Card(const QString &heading = QString(), QWidget *parent = nullptr);

    void setHeading(const QString &heading);
    // Where the content goes.
    QVBoxLayout *body() const { return body_; }
    // At the right of the heading: a small action or a pill.
    void addHeadingWidget(QWidget *widget);
    // Content up to the edges, for a table that fills the card.
    void setFlush(bool flush);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    void relayout();

    QHBoxLayout *head_;
    TextLabel *heading_;
    QVBoxLayout *body_;
    bool flush_ = false;
};

} // namespace rickyard::views
