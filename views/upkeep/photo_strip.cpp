#include "views/upkeep/photo_strip.h"

#include "models/workspace/commands/upkeep_verbs.h"
#include "models/workspace/photos.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"

#include <QDesktopServices>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileDialog>
#include <QLineEdit>
#include <QMimeData>
#include <QPainter>
#include <QPainterPath>
#include <QPushButton>
#include <QToolButton>
#include <QUrl>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;
using workspace::PhotoState;

namespace {

constexpr int kSide = 112;   // pixels at 100 %
constexpr int kDecode = 480; // enough for twice that on a fine screen

QString photoFolder(PageContext &context)
{
    return workspace::photoFolderOf(context.verbs.yard().path());
}

QStringList localFiles(const QMimeData *data)
{
    QStringList paths;
    const QList<QUrl> urls = data->urls();
    for (const QUrl &url : urls)
        if (url.isLocalFile())
            paths << url.toLocalFile();
    return paths;
}

} // namespace

PhotoTile::PhotoTile(PageContext &context, RecordId photo, QWidget *parent)
    : QWidget(parent), m_context(context), m_photo(photo), m_trouble(tr("Reading…")),
      m_frame(new QWidget(this)), m_caption(new QLineEdit(this))
{
    const Theme &look = theme(this);
    const Photo record = context.books().photos.value(photo);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(1));
    m_frame->setFixedHeight(look.px(kSide));
    auto *corner = new QHBoxLayout(m_frame);
    corner->setContentsMargins(look.px(4), look.px(4), look.px(4), look.px(4));
    corner->addStretch(1);
    const QString name = record.caption.isEmpty() ? tr("photograph") : record.caption;
    const auto button = [&](const QString &iconName, const QString &label) {
        auto *made = new QToolButton(m_frame);
        made->setIcon(icon(iconName));
        made->setToolTip(label);
        made->setAccessibleName(tr("%1: %2").arg(label, name));
        corner->addWidget(made, 0, Qt::AlignTop);
        return made;
    };
    auto *open = button(QStringLiteral("search"), tr("Open the picture"));
    connect(open, &QAbstractButton::clicked, this, [this] {
        const QString path =
            workspace::photoPath(photoFolder(m_context), m_context.books().photos.value(m_photo));
        if (!path.isEmpty())
            QDesktopServices::openUrl(QUrl::fromLocalFile(path));
    });
    auto *remove = button(QStringLiteral("close"), tr("Take the picture off"));
    remove->setEnabled(!context.readOnly());
    connect(remove, &QAbstractButton::clicked, this, [this] {
        const auto done = m_context.verbs.remove(TableId::Photo, {m_photo});
        if (!done)
            m_context.refuse(done.problems());
    });
    m_caption->setText(record.caption);
    m_caption->setPlaceholderText(tr("Caption"));
    m_caption->setAccessibleName(tr("Caption of the picture"));
    m_caption->setReadOnly(context.readOnly());
    connect(m_caption, &QLineEdit::editingFinished, this, [this] {
        Photo changed = m_context.books().photos.value(m_photo);
        if (changed.id == 0 || changed.caption == m_caption->text().trimmed())
            return;
        changed.caption = m_caption->text().trimmed();
        const auto done = m_context.verbs.edit(changed, tr("caption"));
        if (!done)
            m_context.refuse(done.problems());
    });
    column->addWidget(m_frame);
    column->addWidget(m_caption);
    setFixedWidth(look.px(kSide * 4 / 3));
    workspace::lookAtPhotoInBackground(
        this, photoFolder(context), record, kDecode, [this](const workspace::PhotoLook &found) {
            m_picture = found.picture;
            m_trouble = found.state == PhotoState::Missing ? tr("The file is missing")
                        : found.state == PhotoState::Changed
                            ? tr("The file was changed since it was attached")
                            : QString();
            setAccessibleDescription(m_trouble);
            update();
            Q_EMIT looked();
        });
}

void PhotoTile::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const QRectF area = QRectF(m_frame->geometry());
    QPainterPath round;
    round.addRoundedRect(area, look.radius(), look.radius());
    painter.fillPath(round, look.color(Role::Field));
    if (!m_picture.isNull()) {
        painter.setClipPath(round);
        // The middle of the picture, filling the tile.
        const QSizeF whole = QSizeF(m_picture.size());
        const QSizeF part = area.size().scaled(whole, Qt::KeepAspectRatio);
        const QRectF from(
            QPointF((whole.width() - part.width()) / 2, (whole.height() - part.height()) / 2),
            part);
        painter.drawImage(area, m_picture, from);
        return;
    }
    painter.setFont(look.font(TextStyle::Caption));
    painter.setPen(look.color(Role::InkMuted));
    painter.drawText(area.adjusted(look.space(2), look.px(34), -look.space(2), -look.space(1)),
                     Qt::AlignCenter | Qt::TextWordWrap, m_trouble);
}

PhotoStrip::PhotoStrip(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_holder(new QWidget(this)),
      m_flow(new FlowLayout(m_holder)),
      m_none(new TextLabel(tr("Drop pictures here, up to 25 MB each."), TextStyle::Caption,
                           Role::InkMuted, this)),
      m_notice(new NoticeBar(this)),
      m_add(new QPushButton(icon(QStringLiteral("add")), tr("Add photographs…"), this))
{
    const Theme &look = theme(this);
    setAcceptDrops(!context.readOnly());
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_flow->setContentsMargins(0, 0, 0, 0);
    m_flow->setSpacingSteps(2, 2);
    column->addWidget(m_holder);
    column->addWidget(m_notice);
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(3));
    row->addWidget(m_add);
    m_none->setWordWrap(true);
    row->addWidget(m_none, 1);
    column->addLayout(row);
    m_add->setAccessibleName(tr("Add photographs"));
    m_add->setEnabled(!context.readOnly());
    connect(m_add, &QPushButton::clicked, this, &PhotoStrip::ask);
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::Photo))
                    refresh();
            });
}

void PhotoStrip::showVisit(RecordId visit)
{
    show(visit, 0);
}

void PhotoStrip::showFinding(RecordId finding)
{
    show(0, finding);
}

void PhotoStrip::show(RecordId visit, RecordId finding)
{
    m_visit = visit;
    m_finding = finding;
    m_notice->dismiss();
    m_add->setEnabled(!m_context.readOnly() && (visit != 0 || finding != 0));
    refresh();
}

void PhotoStrip::refresh()
{
    QVector<RecordId> wanted;
    for (const Photo &photo : m_context.books().photos)
        if ((m_visit != 0 && photo.visit == m_visit) ||
            (m_finding != 0 && photo.finding == m_finding))
            wanted << photo.id;
    // Tiles that stay are not read again.
    QHash<RecordId, PhotoTile *> present;
    for (PhotoTile *tile : std::as_const(m_tiles)) {
        if (wanted.contains(tile->photo())) {
            present.insert(tile->photo(), tile);
        } else {
            m_flow->removeWidget(tile);
            tile->hide();
            tile->deleteLater();
        }
    }
    m_tiles.clear();
    for (RecordId id : std::as_const(wanted)) {
        PhotoTile *tile = present.value(id);
        if (tile == nullptr) {
            tile = new PhotoTile(m_context, id, m_holder);
            m_flow->addWidget(tile);
            tile->show();
        }
        m_tiles << tile;
    }
    m_holder->setVisible(!m_tiles.isEmpty());
}

void PhotoStrip::ask()
{
    const QStringList paths = QFileDialog::getOpenFileNames(
        this, tr("Attach photographs"), QString(),
        tr("Pictures (*.jpg *.jpeg *.png *.webp *.tif *.tiff *.gif *.bmp);;All files (*)"));
    take(paths);
}

void PhotoStrip::take(const QStringList &paths)
{
    if (paths.isEmpty() || m_context.readOnly() || (m_visit == 0 && m_finding == 0))
        return;
    m_waiting << paths;
    if (m_busy)
        return;
    m_refused.clear();
    m_notice->dismiss();
    takeNext();
}

void PhotoStrip::takeNext()
{
    m_busy = !m_waiting.isEmpty();
    m_add->setText(m_busy ? tr("Reading…") : tr("Add photographs…"));
    if (!m_busy) {
        if (!m_refused.isEmpty())
            m_notice->showProblem(m_refused.join(QLatin1Char('\n')));
        Q_EMIT taken();
        return;
    }
    const QString path = m_waiting.takeFirst();
    Photo photo;
    if (m_visit != 0)
        photo.visit = m_visit;
    else
        photo.finding = m_finding;
    workspace::keepPhotoInBackground(this, path, photoFolder(m_context),
                                     [this, photo](const Outcome<workspace::KeptPhoto> &kept) {
                                         if (!kept) {
                                             m_refused << kept.message();
                                         } else {
                                             Photo record = photo;
                                             record.file = kept->file;
                                             record.sha256 = kept->sha256;
                                             record.bytes = kept->bytes;
                                             const auto added =
                                                 commands::addPhoto(m_context.verbs, record);
                                             if (!added)
                                                 m_refused << added.message();
                                         }
                                         takeNext();
                                     });
}

QString PhotoStrip::problem() const
{
    return m_notice->isHidden() ? QString() : m_notice->text();
}

void PhotoStrip::dragEnterEvent(QDragEnterEvent *event)
{
    if (!localFiles(event->mimeData()).isEmpty())
        event->acceptProposedAction();
}

void PhotoStrip::dropEvent(QDropEvent *event)
{
    event->acceptProposedAction();
    take(localFiles(event->mimeData()));
}

} // namespace rickyard::views
