"""${message}"""

import sqlalchemy as sa
from alembic import op

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}


def upgrade() -> None:
    """Bring the book to this form."""
    ${upgrades if upgrades else "pass"}


def downgrade() -> None:
    """Bring it back."""
    ${downgrades if downgrades else "pass"}
