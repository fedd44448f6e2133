// The photographs of a visit or a finding: small pictures with a caption each, added by a file
// dialog or by dropping files here. A file that is missing or was changed is shown as such.
#pragma once

#include "views/page.h"

#include <QHash>
#include <QImage>

class QLineEdit;
class QPushButton;

namespace rickyard::views {

class FlowLayout;
class NoticeBar;
class TextLabel;

class PhotoTile : public QWidget
{
    Q_OBJECT

public:
    PhotoTile(PageContext &context, domain::RecordId photo, QWidget *parent = nullptr);
    [[nodiscard]] domain::RecordId photo() const { return m_photo; }
    // What stands where the picture would be; empty when the picture is shown.
    [[nodiscard]] QString trouble() const { return m_trouble; }
    [[nodiscard]] bool shown() const { return !m_picture.isNull(); }
    [[nodiscard]] QLineEdit *caption() const { return m_caption; }

Q_SIGNALS:
    void looked(); // it was read, and its state is known

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    PageContext &m_context;
    domain::RecordId m_photo;
    QImage m_picture;
    QString m_trouble;
    QWidget *m_frame;
    QLineEdit *m_caption;
};

class PhotoStrip : public QWidget
{
    Q_OBJECT

public:
    explicit PhotoStrip(PageContext &context, QWidget *parent = nullptr);
    void showVisit(domain::RecordId visit);
    void showFinding(domain::RecordId finding);
    void refresh();
    // Takes picture files in, one after the other; refusals are said in words below.
    void take(const QStringList &paths);
    [[nodiscard]] bool busy() const { return m_busy; }
    [[nodiscard]] QString problem() const;
    [[nodiscard]] const QVector<PhotoTile *> &tiles() const { return m_tiles; }

Q_SIGNALS:
    void taken(); // all of what was given was taken in or refused

protected:
    void dragEnterEvent(QDragEnterEvent *event) override;
    void dropEvent(QDropEvent *event) override;

private:
    void show(domain::RecordId visit, domain::RecordId finding);
    void takeNext();
    void ask();

    PageContext &m_context;
    domain::RecordId m_visit = 0;
    domain::RecordId m_finding = 0;
    QStringList m_waiting;
    QStringList m_refused;
    bool m_busy = false;
    QWidget *m_holder;
    FlowLayout *m_flow;
    TextLabel *m_none;
    NoticeBar *m_notice;
    QPushButton *m_add;
    QVector<PhotoTile *> m_tiles;
};

} // namespace rickyard::views
